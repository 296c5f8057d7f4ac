import type { Space } from './space.ts';
import type { VariantSet } from './variant-set.ts';

/** A value and the machines that have it. */
export interface Part<T> {
  readonly set: VariantSet;
  readonly value: T;
}

/**
 * A value for every allowed machine: an immutable map from sets with nothing in common, which together are
 * `space.all`, to values that all differ. It has as many entries as there are distinct values.
 */
export class PartitionMap<T> {
  readonly #space: Space;
  /** In no order: who reads them gets them ordered. */
  readonly #parts: readonly Part<T>[];
  readonly #key: (value: T) => unknown;

  private constructor(space: Space, parts: readonly Part<T>[], key: (value: T) => unknown) {
    this.#space = space;
    this.#parts = parts;
    this.#key = key;
  }

  /**
   * The same value for every machine. Values with the same key are the same value; without `key` a value
   * is its own key, which does for strings, numbers and shared objects.
   */
  static constant<T>(
    space: Space,
    value: T,
    key: (value: T) => unknown = (itself) => itself,
  ): PartitionMap<T> {
    return new PartitionMap(space, [{ set: space.all, value }], key);
  }

  /** Each distinct value with its machines, ordered by the first machine of each. */
  entries(): readonly Part<T>[] {
    return this.#ordered(this.#parts);
  }

  /** The values that the machines of `set` have; none if it is empty. */
  at(set: VariantSet): readonly Part<T>[] {
    if (set === this.#space.all) return this.entries();
    const inside: Part<T>[] = [];
    for (const { set: own, value } of this.#parts) {
      const common = this.#space.and(own, set);
      if (common !== this.#space.none) inside.push({ set: common, value });
    }
    return this.#ordered(inside);
  }

  /** The machines whose value passes the test. */
  where(test: (value: T) => boolean): VariantSet {
    const { none } = this.#space;
    return this.#parts.reduce(
      (set, part) => (test(part.value) ? this.#space.or(set, part.set) : set),
      none,
    );
  }

  /** Changes the value of every machine in `under`; `change` is called once for each value that occurs there. */
  map(under: VariantSet, change: (value: T, machines: VariantSet) => T): PartitionMap<T> {
    const space = this.#space;
    const next: Part<T>[] = [];
    let changed = false;
    for (const part of this.#parts) {
      const inside = space.and(part.set, under);
      const value = inside === space.none ? part.value : change(part.value, inside);
      if (inside === space.none || this.#same(value, part.value)) {
        next.push(part);
        continue;
      }
      changed = true;
      next.push({ set: inside, value });
      if (inside !== part.set) {
        next.push({ set: space.minus(part.set, inside), value: part.value });
      }
    }
    return changed ? new PartitionMap(space, this.#merged(next, this.#key), this.#key) : this;
  }

  /** The value that two maps of the same space make together, machine by machine. */
  combine<U, V>(
    other: PartitionMap<U>,
    join: (value: T, others: U, machines: VariantSet) => V,
    key: (value: V) => unknown = (itself) => itself,
  ): PartitionMap<V> {
    const joined: Part<V>[] = [];
    for (const { set, value } of this.#parts) {
      for (const part of other.at(set)) {
        joined.push({ set: part.set, value: join(value, part.value, part.set) });
      }
    }
    return new PartitionMap(this.#space, this.#merged(joined, key), key);
  }

  /** True if every machine has the same value in both. */
  equal(other: PartitionMap<T>): boolean {
    if (this.#parts.length !== other.#parts.length) return false;
    const others = other.entries();
    return this.entries().every((part, index) => {
      const counterpart = others[index];
      return part.set === counterpart?.set && this.#same(part.value, counterpart.value);
    });
  }

  #same(a: T, b: T): boolean {
    return Object.is(a, b) || Object.is(this.#key(a), this.#key(b));
  }

  #merged<V>(parts: readonly Part<V>[], keyOf: (value: V) => unknown): readonly Part<V>[] {
    const byKey = new Map<unknown, Part<V>>();
    for (const part of parts) {
      const key = keyOf(part.value);
      const known = byKey.get(key);
      const set = known === undefined ? part.set : this.#space.or(known.set, part.set);
      byKey.set(key, known === undefined ? part : { set, value: known.value });
    }
    return [...byKey.values()];
  }

  #ordered<V>(parts: readonly Part<V>[]): readonly Part<V>[] {
    return parts.length < 2 ? parts : parts.toSorted((a, b) => this.#space.compare(a.set, b.set));
  }
}
