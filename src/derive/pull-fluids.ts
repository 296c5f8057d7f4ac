import type { Circuit } from '../catalogue/index.ts';
import {
  add,
  isMeasureOf,
  mostOf,
  parseQuantity,
  type Rational,
  smaller,
  zero,
} from '../quantity/index.ts';
import type { Action, Written } from '../syntax/index.ts';

/** What has run out: all, or an amount in L. */
type Drained = Rational | 'whole';

/**
 * What a stretch of work drains and fills of one circuit. Stretches are joined in the order of work, so
 * that a fill without an amount asks for what was drained before it.
 */
export type Filling =
  | { readonly isFilled: false; readonly drained: Drained }
  | {
      readonly isFilled: true;
      /** Drained before the first fill, where that fill says no amount. */
      readonly first: Drained | undefined;
      /** For all other fills, in L. */
      readonly need: Rational;
      /** Drained after the last fill. */
      readonly drained: Drained;
    };

export const noFilling: Filling = { isFilled: false, drained: zero };

/** Makes up what was drained, with none of the circuit's own fluid. */
export const partFilling: Filling = { isFilled: true, first: undefined, need: zero, drained: zero };

/** What one action does; undefined for one that neither drains nor fills. */
export function fillingOf({ verb, amount }: Action): Filling | undefined {
  const litres = amountOf(amount);
  if (verb === 'drain') return { isFilled: false, drained: litres ?? 'whole' };
  if (verb !== 'fill') return undefined;
  return litres === undefined
    ? { isFilled: true, first: zero, need: zero, drained: zero }
    : { isFilled: true, first: undefined, need: litres, drained: zero };
}

/** One stretch after the other. */
export function joinFillings(a: Filling, b: Filling, circuit: Circuit): Filling {
  if (!b.isFilled) return { ...a, drained: both(a.drained, b.drained) };
  const { first, need } = b;
  if (!a.isFilled) return first === undefined ? b : { ...b, first: both(a.drained, first) };
  const more = first === undefined ? zero : missing(both(a.drained, first), circuit, zero);
  return { ...b, first: a.first, need: add(a.need, add(more, need)) };
}

/** What must be at hand for it, in L. A job that fills what it did not drain finds the circuit empty. */
export function litresFor(filling: Filling, circuit: Circuit): Rational {
  if (!filling.isFilled) return zero;
  const { first, need } = filling;
  if (first === undefined) return need;
  return add(need, missing(first, circuit, capacityOf(circuit)));
}

/** Equal for equal fillings. */
export function fillingKey(filling: Filling): string {
  const drained = (one: Drained | undefined): string =>
    one === undefined ? '-' : one === 'whole' ? one : `${one.n}/${one.d}`;
  return filling.isFilled
    ? `${drained(filling.first)} ${drained(filling.need)} ${drained(filling.drained)}`
    : drained(filling.drained);
}

/** An amount that is written as a volume, in L; undefined for others and where none is said. */
function amountOf(amount: Written | undefined): Rational | undefined {
  if (amount === undefined) return undefined;
  const { value } = parseQuantity(amount.text);
  return value !== undefined && isMeasureOf(value, 'volume') ? mostOf(value) : undefined;
}

function missing(drained: Drained, circuit: Circuit, none: Rational): Rational {
  const capacity = capacityOf(circuit);
  if (drained === 'whole') return capacity;
  return drained.n === 0n ? none : smaller(drained, capacity);
}

function capacityOf({ capacity }: Circuit): Rational {
  return capacity !== undefined && isMeasureOf(capacity, 'volume') ? mostOf(capacity) : zero;
}

function both(a: Drained, b: Drained): Drained {
  return a === 'whole' || b === 'whole' ? 'whole' : add(a, b);
}
