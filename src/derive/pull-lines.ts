import type { VariantSet } from '../applicability/index.ts';
import type { Circuit, Consumable, Item } from '../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import {
  add,
  compare,
  containersFor,
  isMeasureOf,
  kindOf,
  mostOf,
  percentOf,
  type Quantity,
  type Rational,
  singleOf,
  zero,
} from '../quantity/index.ts';
import { piecesOf } from './item-name.ts';
import { newPieces, type Spare } from './parts-to-pull.ts';
import { pullCase } from './pull-case.ts';
import { litresFor } from './pull-fluids.ts';
import type { PullLine, PullThing } from './pull-line.ts';
import { type PullNeeds, rationalKey } from './pull-needs.ts';
import { type Amounts, casesOf, type PullSum, sumOver } from './pull-sums.ts';

/** The asked procedures, each with what it needs. */
export type Asked = readonly (readonly [LinkedProcedure, PullNeeds])[];

const pieces: Amounts<number> = {
  none: 0,
  add: (a, b) => a + b,
  compare: (a, b) => a - b,
  key: (count) => count,
};
const exact: Amounts<Rational> = { none: zero, add, compare, key: rationalKey };

/** The lines of a list for the machines of a set, in no order. */
export function pullLines(
  { manual }: LinkedManual,
  asked: Asked,
  machines: VariantSet,
): readonly PullLine[] {
  return new Lines(manual, asked, machines).lines;
}

class Lines {
  readonly lines: PullLine[] = [];
  readonly #manual: LinkedManual['manual'];
  readonly #asked: Asked;
  readonly #machines: VariantSet;

  constructor(manual: LinkedManual['manual'], asked: Asked, machines: VariantSet) {
    this.#manual = manual;
    this.#asked = asked;
    this.#machines = machines;
    for (const item of this.#items('spares')) this.#spare(item);
    for (const item of this.#items('fluids')) this.#fluid(item);
    for (const item of this.#items('applied')) this.#applied(item);
    for (const item of this.#items('present')) this.#present(item);
  }

  #items<K extends 'present' | 'spares' | 'fluids' | 'applied'>(
    of: K,
  ): ReadonlySet<Parameters<PullNeeds[K]['get']>[0]> {
    return new Set(this.#asked.flatMap(([, needs]) => [...needs[of].keys()]));
  }

  #spare(item: Spare): void {
    const { space } = this.#manual;
    const maps = this.#asked.map(([, { spares }]) => spares.get(item));
    const sum = sumOver(space, maps, pieces, (tally) => newPieces(tally, item));
    const stack = item.kind === 'fastener' ? Map.groupBy(item.stack, (name) => name) : [];
    for (const { set, value, isMost } of casesOf(sum, this.#machines, space, pieces)) {
      const { kind } = item;
      this.#put(set, sum, { kind, item, count: value }, isMost);
      for (const [named, all] of stack)
        this.#put(set, sum, { kind, item, named, count: all.length * value }, isMost);
    }
  }

  #fluid(item: Circuit): void {
    const { space } = this.#manual;
    const maps = this.#asked.map(([, { fluids }]) => fluids.get(item));
    const sum = sumOver(space, maps, exact, (filling) => litresFor(filling, item));
    const isReady = item.mix.length === 0 || item.containers.some(({ of }) => of === undefined);
    for (const { set, value, isMost } of casesOf(sum, this.#machines, space, exact)) {
      const thing = { kind: 'fluid', item } as const;
      if (isReady) this.#put(set, sum, { ...thing, ...bought(item, value, item.capacity) }, isMost);
      else
        for (const { name: named, share } of item.mix) {
          if (!isMeasureOf(share, 'share')) continue;
          const litres = percentOf(value, mostOf(share));
          const part = bought(item, litres, item.capacity, named);
          this.#put(set, sum, { ...thing, named, share, ...part }, isMost);
        }
    }
  }

  #applied(item: Consumable): void {
    const { space } = this.#manual;
    const found = this.#asked.map(([, { applied }]) => applied.get(item));
    const as = found.find((one) => one !== undefined)?.as;
    const maps = found.map((one) => one?.amounts);
    const sum = sumOver(space, maps, exact, (amount) => amount);
    for (const { set, value, isMost } of casesOf(sum, this.#machines, space, exact))
      this.#put(set, sum, { kind: 'consumable', item, ...bought(item, value, as) }, isMost);
  }

  /** Tools and aids once for all procedures; what has no amount, as needed. */
  #present(item: Item): void {
    if (this.lines.some((line) => line.item === item)) return;
    const { space } = this.#manual;
    const users = this.#asked.map(([, { present }]) => present.get(item) ?? space.none);
    const any = users.reduce((a, b) => space.or(a, b), space.none);
    const set = space.and(any, this.#machines);
    const { kind } = item;
    if (kind === 'tool' || kind === 'aid')
      this.#put(set, { users }, { kind, item, count: piecesOf(item) });
    else this.#put(set, { users }, { kind: kind === 'circuit' ? 'fluid' : 'consumable', item });
  }

  #put(
    set: VariantSet,
    { users }: Pick<PullSum<unknown>, 'users'>,
    thing: PullThing,
    isMost = false,
  ): void {
    const { space } = this.#manual;
    const one = this.#asked.flatMap(([, { knownTo }]) => knownTo.get(thing.item) ?? [])[0];
    if (one === undefined || set === space.none) return;
    this.lines.push({
      ...thing,
      one,
      isMost,
      when: pullCase(set, this.#machines, this.#manual),
      procedures: this.#asked.flatMap(([procedure], i) =>
        space.and(users[i] ?? space.none, set) === space.none ? [] : [procedure],
      ),
    });
  }
}

/** An amount in the unit in which the manual gives it, with the containers that it comes in. */
function bought(
  item: Circuit | Consumable,
  amount: Rational,
  as: Quantity | undefined,
  named?: string,
): Pick<PullThing, 'quantity' | 'containers'> {
  if (as === undefined) return {};
  const sizes = item.containers
    .flatMap(({ of, sizes }) => (of === named ? sizes : []))
    .filter((size) => kindOf(size) === kindOf(as));
  return { ...shown(amount, as), containers: containersFor(amount, sizes) };
}

function shown(amount: Rational, as: Quantity): Pick<PullThing, 'quantity'> {
  if (as.form === 'torque-angle') return {};
  const written = as.form === 'range' ? as.high : as.amount;
  return { quantity: singleOf(amount, as.unit, written.step) };
}
