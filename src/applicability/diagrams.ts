import { VariantSet } from './variant-set.ts';

/** Ids stay below this, so that a pair of them is one exact number: a key for the caches. */
const ID_LIMIT = 2 ** 26;

type Operation = 'and' | 'or' | 'minus';

/**
 * The unique table and the operations on sets, over every combination of values, allowed or not.
 * Attributes are known by level only.
 */
export class Diagrams {
  readonly none = new VariantSet(0, Number.POSITIVE_INFINITY, []);
  readonly full = new VariantSet(1, Number.POSITIVE_INFINITY, []);
  readonly #widths: number[] = [];
  /** The nodes of each level by their children: two ids as one number, more as words. */
  readonly #unique: Map<number | string, VariantSet>[] = [];
  #nodeCount = 2;
  readonly #results: Readonly<Record<Operation, Map<number, VariantSet>>> = {
    and: new Map(),
    or: new Map(),
    minus: new Map(),
  };
  readonly #forgotten = new Map<number, VariantSet>();

  /** Adds an attribute of so many values at the end of the order; sets that exist do not change. */
  addLevel(width: number): number {
    this.#widths.push(width);
    this.#unique.push(new Map());
    return this.#widths.length - 1;
  }

  get levels(): number {
    return this.#widths.length;
  }

  width(level: number): number {
    const width = this.#widths[level];
    if (width === undefined) throw new RangeError(`no attribute stands at place ${level}`);
    return width;
  }

  /** Nodes made so far, the two that decide nothing included. */
  get nodeCount(): number {
    return this.#nodeCount;
  }

  node(level: number, children: readonly VariantSet[]): VariantSet {
    const [first = this.none, second] = children;
    if (children.every((child) => child === first)) return first;
    const key =
      children.length === 2 && second !== undefined
        ? first.id * ID_LIMIT + second.id
        : children.map(({ id }) => id).join();
    const unique = this.#unique[level];
    if (unique === undefined) throw new RangeError(`no attribute stands at place ${level}`);
    const known = unique.get(key);
    if (known !== undefined) return known;
    if (this.#nodeCount === ID_LIMIT)
      throw new RangeError('the variant sets no longer fit in memory');
    const made = new VariantSet(this.#nodeCount, level, children);
    this.#nodeCount += 1;
    unique.set(key, made);
    return made;
  }

  /** Everything whose value at the level is one of those given by index. */
  literal(level: number, values: readonly number[], rest: VariantSet = this.full): VariantSet {
    const children = Array.from({ length: this.width(level) }, () => this.none);
    for (const value of values) children[value] = rest;
    return this.node(level, children);
  }

  /** What is left of a set once the attribute at `level`, at or before the set's own, has a value. */
  child(set: VariantSet, level: number, value: number): VariantSet {
    return set.level === level ? (set.children[value] ?? this.none) : set;
  }

  and(a: VariantSet, b: VariantSet): VariantSet {
    return this.#apply('and', a, b);
  }

  or(a: VariantSet, b: VariantSet): VariantSet {
    return this.#apply('or', a, b);
  }

  minus(a: VariantSet, b: VariantSet): VariantSet {
    return this.#apply('minus', a, b);
  }

  covers(whole: VariantSet, part: VariantSet): boolean {
    return this.minus(part, whole) === this.none;
  }

  /** What is in the set for at least one value at the level. */
  forget(set: VariantSet, level: number): VariantSet {
    if (set.level > level) return set;
    const key = set.id * ID_LIMIT + level;
    const known = this.#forgotten.get(key);
    if (known !== undefined) return known;
    const without = new Map<VariantSet, VariantSet>();
    for (const node of this.nodesUpwards(set)) {
      const children = node.children.map((child) => without.get(child) ?? child);
      if (node.level < level) without.set(node, this.node(node.level, children));
      if (node.level === level)
        without.set(
          node,
          children.reduce((a, b) => this.or(a, b)),
        );
    }
    const made = without.get(set) ?? set;
    this.#forgotten.set(key, made);
    return made;
  }

  /** Every level that the set's diagram decides on, in order. */
  levelsOf(set: VariantSet): readonly number[] {
    const levels = new Set<number>();
    for (const node of this.nodesOf(set)) levels.add(node.level);
    return [...levels].sort((a, b) => a - b);
  }

  /** Every node of the set's diagram that decides something. */
  nodesOf(set: VariantSet): ReadonlySet<VariantSet> {
    const seen = new Set<VariantSet>();
    if (set.children.length > 0) seen.add(set);
    // A set's iterator also visits what is added while it runs.
    for (const node of seen) {
      for (const child of node.children) if (child.children.length > 0) seen.add(child);
    }
    return seen;
  }

  /** The same, each node after its children. */
  nodesUpwards(set: VariantSet): readonly VariantSet[] {
    return [...this.nodesOf(set)].sort((a, b) => b.level - a.level);
  }

  /** Goes down both diagrams at once, on a stack of its own: depth is then no danger. */
  #apply(operation: Operation, a: VariantSet, b: VariantSet): VariantSet {
    const cache = this.#results[operation];
    const easy = this.#easy(operation, a, b) ?? cache.get(pairKey(operation, a, b));
    if (easy !== undefined) return easy;
    const open: Step[] = [stepOf(operation, a, b)];
    let made = this.none;
    for (let step = open.at(-1); step !== undefined; step = open.at(-1)) {
      const value = step.children.length;
      if (value === this.width(step.level)) {
        made = this.node(step.level, step.children);
        cache.set(step.key, made);
        open.pop();
        open.at(-1)?.children.push(made);
        continue;
      }
      const left = this.child(step.a, step.level, value);
      const right = this.child(step.b, step.level, value);
      const child =
        this.#easy(operation, left, right) ?? cache.get(pairKey(operation, left, right));
      if (child === undefined) open.push(stepOf(operation, left, right));
      else step.children.push(child);
    }
    return made;
  }

  /** The results that need no look inside. */
  #easy(operation: Operation, a: VariantSet, b: VariantSet): VariantSet | undefined {
    const { none, full } = this;
    switch (operation) {
      case 'and':
        if (a === b || b === full) return a;
        if (a === full) return b;
        return a === none || b === none ? none : undefined;
      case 'or':
        if (a === b || b === none) return a;
        if (a === none) return b;
        return a === full || b === full ? full : undefined;
      case 'minus':
        if (b === none) return a;
        return a === b || a === none || b === full ? none : undefined;
    }
  }
}

/** One pair of nodes with the results for the values done so far. */
interface Step {
  readonly a: VariantSet;
  readonly b: VariantSet;
  readonly key: number;
  readonly level: number;
  readonly children: VariantSet[];
}

function stepOf(operation: Operation, a: VariantSet, b: VariantSet): Step {
  const level = Math.min(a.level, b.level);
  return { a, b, key: pairKey(operation, a, b), level, children: [] };
}

function pairKey(operation: Operation, a: VariantSet, b: VariantSet): number {
  const swap = operation !== 'minus' && a.id > b.id;
  return swap ? b.id * ID_LIMIT + a.id : a.id * ID_LIMIT + b.id;
}
