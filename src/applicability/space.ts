import type { Attribute, FreshAttribute } from './attribute.ts';
import { type Description, describeSet } from './describe.ts';
import type { Diagrams } from './diagrams.ts';
import { compareByFirstMachine, countMachines, firstMachine } from './machines.ts';
import type { VariantSet } from './variant-set.ts';

/** A value for each attribute, by id. */
export type Assignment = ReadonlyMap<string, string>;

interface Place {
  readonly level: number;
  readonly attribute: Attribute;
}

/**
 * The machines of a manual, and the sets of them. Every set that a space gives out lies within `all` and
 * is the only object for its machines, so `===` compares sets. Ids and values that the space does not
 * have are a fault of the caller and throw; conditions are checked by `resolveCondition` first.
 */
export class Space {
  /** The attributes that the manual declares. */
  readonly attributes: readonly Attribute[];
  /** Every machine that the manual allows. */
  readonly all: VariantSet;
  readonly none: VariantSet;
  readonly #diagrams: Diagrams;
  readonly #levels: (Attribute | FreshAttribute)[] = [];
  readonly #places = new Map<string, Place>();
  readonly #described = new Map<string, Description>();

  /** `diagrams` has a level for each attribute already; see `createSpace`. */
  constructor(attributes: readonly Attribute[], diagrams: Diagrams, all: VariantSet) {
    this.attributes = attributes;
    this.all = all;
    this.none = diagrams.none;
    this.#diagrams = diagrams;
    for (const attribute of attributes) this.#place(this.#levels.length, attribute);
  }

  /** How many attributes were added to those that the manual declares. */
  get added(): number {
    return this.#levels.length - this.attributes.length;
  }

  /** The declared attribute of this id. */
  attribute(id: string): Attribute | undefined {
    const place = this.#places.get(id);
    return place === undefined || place.level >= this.attributes.length
      ? undefined
      : place.attribute;
  }

  /**
   * Adds an attribute after all others. Sets that exist stay as they are: they hold for each of its ways.
   * Throws if more than one way has no label, since neither could be put in words.
   */
  fresh(ways: FreshAttribute['ways'], label: string): FreshAttribute {
    if (ways.filter((way) => way.label === undefined).length > 1) {
      throw new RangeError(`more than one way through “${label}” has no label`);
    }
    const [first, ...rest] = ways.map((way) => way.value);
    if (first === undefined) throw new RangeError(`“${label}” has no way through it`);
    let number = this.added + 1;
    while (this.#places.has(`branch ${number}`)) number += 1;
    const attribute = { id: `branch ${number}`, values: [first, ...rest], label, ways } as const;
    this.#place(this.#diagrams.addLevel(ways.length), attribute);
    return attribute;
  }

  /** The machines whose attribute has this value. */
  is(attributeId: string, value: string): VariantSet {
    return this.isIn(attributeId, [value]);
  }

  /** The machines whose attribute has one of these values. */
  isIn(attributeId: string, values: readonly string[]): VariantSet {
    const place = this.#placeOf(attributeId);
    const indexes = values.map((value) => valueIndex(place, value));
    return this.#diagrams.and(this.#diagrams.literal(place.level, indexes), this.all);
  }

  and(a: VariantSet, b: VariantSet): VariantSet {
    // Every set lies within `all`, however large the diagram of `all` is.
    if (b === this.all) return a;
    return a === this.all ? b : this.#diagrams.and(a, b);
  }

  or(a: VariantSet, b: VariantSet): VariantSet {
    return a === this.all || b === this.all ? this.all : this.#diagrams.or(a, b);
  }

  /** The allowed machines that are not in the set. */
  not(set: VariantSet): VariantSet {
    return this.#diagrams.minus(this.all, set);
  }

  minus(a: VariantSet, b: VariantSet): VariantSet {
    return b === this.all ? this.none : this.#diagrams.minus(a, b);
  }

  isEmpty(set: VariantSet): boolean {
    return set === this.none;
  }

  /** True if every machine of `part` is in `whole`. */
  covers(whole: VariantSet, part: VariantSet): boolean {
    return this.minus(part, whole) === this.none;
  }

  equals(a: VariantSet, b: VariantSet): boolean {
    return a === b;
  }

  /** The allowed machines that are in the set for at least one value of the attribute. */
  forget(set: VariantSet, attributeId: string): VariantSet {
    const { level } = this.#placeOf(attributeId);
    return this.#diagrams.and(this.#diagrams.forget(set, level), this.all);
  }

  /** The allowed machines that would be in the set if their attribute had this value. */
  cofactor(set: VariantSet, attributeId: string, value: string): VariantSet {
    const place = this.#placeOf(attributeId);
    const literal = this.#diagrams.literal(place.level, [valueIndex(place, value)]);
    return this.forget(this.#diagrams.and(set, literal), attributeId);
  }

  /** How many machines of the declared attributes are in the set in at least one way of every branch. */
  count(set: VariantSet): bigint {
    const declared = this.attributes.length;
    const branches = this.#diagrams.levelsOf(set).filter((level) => level >= declared);
    const machines = branches.reduce((rest, level) => this.#diagrams.forget(rest, level), set);
    return countMachines(this.#diagrams, machines, declared);
  }

  /**
   * One machine of the set, the first in the order of the manual, with the branches that the set decides
   * on; undefined if it is empty.
   */
  pick(set: VariantSet): Assignment | undefined {
    if (set === this.none) return undefined;
    const indexes = firstMachine(this.#diagrams, set);
    const machine = new Map<string, string>();
    this.#levels.forEach((attribute, level) => {
      const index = indexes.get(level);
      const value = attribute.values[index ?? 0];
      const counts = index !== undefined || level < this.attributes.length;
      if (counts && value !== undefined) machine.set(attribute.id, value);
    });
    return machine;
  }

  /**
   * Ids of the attributes that the set decides on, in order. Since a set lies within `all`, those that a
   * constraint ties to them are among these.
   */
  support(set: VariantSet): readonly string[] {
    return this.#diagrams.levelsOf(set).flatMap((level) => this.#levels[level]?.id ?? []);
  }

  /** Nodes in the diagram of one set: how much room it takes. */
  size(set: VariantSet): number {
    return this.#diagrams.nodesOf(set).size;
  }

  /** Nodes that the whole space has made so far. */
  get nodeCount(): number {
    return this.#diagrams.nodeCount;
  }

  /** Orders two sets with nothing in common by their first machines. Neither may be empty. */
  compare(a: VariantSet, b: VariantSet): number {
    return compareByFirstMachine(this.#diagrams, a, b);
  }

  /**
   * The shortest condition that tells the machines of the set from the other machines of `within`;
   * undefined if there are no others. See `Description` for sets that no reader could be told.
   */
  describe(set: VariantSet, within: VariantSet = this.all): Description {
    const key = `${set.id},${within.id}`;
    if (this.#described.has(key)) return this.#described.get(key);
    const on = this.#diagrams.and(set, within);
    const off = this.#diagrams.minus(within, set);
    const description = describeSet(this.#diagrams, this.#levels, on, off);
    this.#described.set(key, description);
    return description;
  }

  #place(level: number, attribute: Attribute | FreshAttribute): void {
    this.#levels.push(attribute);
    this.#places.set(attribute.id, { level, attribute });
  }

  #placeOf(attributeId: string): Place {
    const place = this.#places.get(attributeId);
    if (place === undefined) throw new RangeError(`the space has no attribute “${attributeId}”`);
    return place;
  }
}

function valueIndex({ attribute }: Place, value: string): number {
  const index = attribute.values.indexOf(value);
  if (index < 0) throw new RangeError(`“${value}” is not a value of “${attribute.id}”`);
  return index;
}
