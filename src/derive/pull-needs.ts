import { PartitionMap, type Space, type VariantSet } from '../applicability/index.ts';
import type { Circuit, Consumable, Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import {
  add,
  isMeasureOf,
  type Measure,
  mostOf,
  parseQuantity,
  type Rational,
  zero,
} from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import { partsPoured } from './fluid-facts.ts';
import { addTallies, noTally, type Spare, type Tally, tallyKey, tallyOf } from './parts-to-pull.ts';
import {
  type Filling,
  fillingKey,
  fillingOf,
  joinFillings,
  noFilling,
  partFilling,
} from './pull-fluids.ts';

/** An amount of a consumable, in the base unit of its kind, with a measure in which it was written. */
export interface Applied {
  readonly as: Measure;
  readonly amounts: PartitionMap<Rational>;
}

/** What the work needs, for which variants and findings, in the order of work. */
export class PullNeeds {
  /** Who needs a tool, an aid or a consumable at all, however often. */
  readonly present = new Map<Item, VariantSet>();
  readonly spares = new Map<Spare, PartitionMap<Tally>>();
  readonly fluids = new Map<Circuit, PartitionMap<Filling>>();
  readonly applied = new Map<Consumable, Applied>();
  /** A procedure that knows the item, for its owner. */
  readonly knownTo = new Map<Item, LinkedProcedure>();
  readonly #space: Space;

  constructor(space: Space) {
    this.#space = space;
  }

  /** Something that must be at hand. */
  handOut(item: Item, one: LinkedProcedure, under: VariantSet): void {
    if (under === this.#space.none) return;
    this.#know(item, one);
    this.present.set(item, this.#space.or(this.present.get(item) ?? this.#space.none, under));
  }

  /** What an action uses up. */
  use(action: Action, item: Item, one: LinkedProcedure, under: VariantSet): void {
    if (item.kind === 'fastener' || item.kind === 'part') {
      const tally = tallyOf(action, item);
      if (tally === undefined) return;
      const before = this.#sparesOf(item);
      this.spares.set(
        item,
        before.map(under, (sum) => addTallies(sum, tally)),
      );
    } else if (item.kind === 'circuit') {
      // Whoever bleeds a circuit tops it up; with how much, nobody knows.
      if (action.verb === 'bleed') this.handOut(item, one, under);
      // Of a mix that is corrected only the part is fetched that is poured in, and it is a consumable.
      const isPart = partsPoured(item, action, one).length > 0;
      const filling = isPart ? partFilling : fillingOf(action);
      if (filling === undefined) return;
      const before = this.#fluidOf(item);
      this.fluids.set(
        item,
        before.map(under, (sum) => joinFillings(sum, filling, item)),
      );
    } else if (item.kind === 'consumable') {
      const as = amountOf(action);
      if (as === undefined) return;
      const before = this.#appliedOf(item, as);
      this.applied.set(item, {
        ...before,
        amounts: before.amounts.map(under, (sum) => add(sum, mostOf(as))),
      });
    } else return;
    this.#know(item, one);
  }

  /** Other work that is done at this point, for those in `under`. */
  perform(other: PullNeeds, under: VariantSet): void {
    const outside = this.#space.not(under);
    for (const [item, set] of other.present) {
      const one = other.knownTo.get(item);
      if (one !== undefined) this.handOut(item, one, this.#space.and(set, under));
    }
    for (const [item, tallies] of other.spares) {
      const there = tallies.map(outside, () => noTally);
      this.spares.set(item, this.#sparesOf(item).combine(there, addTallies, tallyKey));
    }
    for (const [item, fillings] of other.fluids) {
      const there = fillings.map(outside, () => noFilling);
      const join = (a: Filling, b: Filling): Filling => joinFillings(a, b, item);
      this.fluids.set(item, this.#fluidOf(item).combine(there, join, fillingKey));
    }
    for (const [item, { as, amounts }] of other.applied) {
      const there = amounts.map(outside, () => zero);
      const before = this.#appliedOf(item, as);
      this.applied.set(item, {
        ...before,
        amounts: before.amounts.combine(there, add, rationalKey),
      });
    }
    for (const [item, one] of other.knownTo) this.#know(item, one);
  }

  #sparesOf(item: Spare): PartitionMap<Tally> {
    return this.spares.get(item) ?? PartitionMap.constant(this.#space, noTally, tallyKey);
  }

  #fluidOf(item: Circuit): PartitionMap<Filling> {
    return this.fluids.get(item) ?? PartitionMap.constant(this.#space, noFilling, fillingKey);
  }

  #appliedOf(item: Consumable, as: Measure): Applied {
    const known = this.applied.get(item);
    return known ?? { as, amounts: PartitionMap.constant(this.#space, zero, rationalKey) };
  }

  #know(item: Item, one: LinkedProcedure): void {
    if (!this.knownTo.has(item)) this.knownTo.set(item, one);
  }
}

/** Equal for equal amounts. */
export function rationalKey({ n, d }: Rational): string {
  return `${n}/${d}`;
}

/** The amount of a consumable that an action says, by volume or mass. */
function amountOf({ amount }: Action): Measure | undefined {
  if (amount === undefined) return undefined;
  const { value } = parseQuantity(amount.text);
  if (value === undefined) return undefined;
  return isMeasureOf(value, 'volume') || isMeasureOf(value, 'mass') ? value : undefined;
}
