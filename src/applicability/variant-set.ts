/**
 * A set of machines: a node of a reduced ordered decision diagram whose branches are attribute values.
 * One space has one object for each set, so `===` is equality of sets. Only the space makes them;
 * outside this room `id` is the one thing to read.
 */
export class VariantSet {
  /** Unlike for every set of the space. Depends on what was built before: never print or sort by it. */
  readonly id: number;
  /** Place in the attribute order; the two sets that decide nothing stand after every attribute. */
  readonly level: number;
  /** A private member, so that nothing which only looks like a set can be taken for one. */
  readonly #children: readonly VariantSet[];

  constructor(id: number, level: number, children: readonly VariantSet[]) {
    this.id = id;
    this.level = level;
    this.#children = children;
  }

  /** What is left to decide for each value of the attribute. */
  get children(): readonly VariantSet[] {
    return this.#children;
  }
}
