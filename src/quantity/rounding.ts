import { type Amount, exactValue } from './amount.ts';
import { exactlyIn } from './exact-conversion.ts';
import type { Measure } from './quantity.ts';
import * as exact from './rational.ts';
import { allowance, finerUntil, firstPlace, stepIn, textAt } from './rounding-place.ts';
import { type RoundedTolerance, roundedTolerance } from './rounding-tolerance.ts';
import { type UnitId, unitRow } from './unit.ts';

type Rational = exact.Rational;

/** A measure as decimal texts, ready to print. */
export type RoundedMeasure =
  | { readonly form: 'single'; readonly amount: string }
  | { readonly form: 'limit'; readonly limit: 'max' | 'min'; readonly amount: string }
  | { readonly form: 'range'; readonly low: string; readonly high: string }
  | RoundedTolerance;

/**
 * A measure rounded for print in a unit of its own kind.
 *
 * - A plain amount keeps the fewest digits whose rounding error is not several times that of the written number
 *   (NIST SP 811 (2008), B.7.2: the relative rounding errors are of the same order), an exact half to the even digit
 *   (B.7.1). "Several" is taken as more than twice: that gives every worked example of B.7.2 and keeps 60 N·m = 44 lbf·ft.
 *   A number written with one digit says more in a workshop than B.7.2 credits it with (2 h is 120 min, not 100 min), so
 *   digits are added until the number moves by no more than 2.5 %.
 * - A maximum and the top of a range are rounded down, a minimum and the bottom up, a tolerance so that its band stays
 *   inside the written one (general practice). Digits are added until no end moves by more than the rounding error of
 *   the written number, nor by more than 2.5 % of it.
 */
export function roundedIn(measure: Measure, unit: UnitId): RoundedMeasure {
  const from = measure.unit;
  switch (measure.form) {
    case 'single': {
      const step = stepIn(measure.amount, from, unit);
      const value = exactlyIn(exactValue(measure.amount), from, unit);
      return {
        form: 'single',
        amount: textAt(value, nearestPlace(value, step, unit), 'half-even'),
      };
    }
    case 'limit': {
      const { limit } = measure;
      const end = endIn(measure.amount, from, unit, limit === 'max' ? 'down' : 'up');
      const place = finerUntil(firstPlace(end.step, unit), (at) => isCloseEnough(end, at));
      return { form: 'limit', limit, amount: textAt(end.value, place, end.mode) };
    }
    case 'range': {
      const size = largestOf(measure.low, measure.high);
      const low = endIn(measure.low, from, unit, 'up', size);
      const high = endIn(measure.high, from, unit, 'down', size);
      const start = firstPlace(exact.smaller(low.step, high.step), unit);
      const place = finerUntil(
        start,
        (at) =>
          isCloseEnough(low, at) &&
          isCloseEnough(high, at) &&
          exact.compare(roundedEnd(low, at), roundedEnd(high, at)) < 0,
      );
      return {
        form: 'range',
        low: textAt(low.value, place, 'up'),
        high: textAt(high.value, place, 'down'),
      };
    }
    case 'tolerance':
      return roundedTolerance(measure, unit);
  }
}

function nearestPlace(value: Rational, step: Rational, unit: UnitId): number {
  return finerUntil(firstPlace(step, unit), (place) => {
    const moved = exact.absolute(exact.subtract(exact.roundTo(value, place, 'half-even'), value));
    // Zeros at the end of a whole number do not show that it was rounded to tens: it is read as good to one.
    const shown = exact.larger(step, exact.powerOfTen(Math.min(place, 0)));
    return exact.compare(moved, allowance(value, shown, unit)) <= 0;
  });
}

/** One end of an allowed band, and how far it may move inwards. */
type End = {
  readonly value: Rational;
  readonly step: Rational;
  readonly mode: 'up' | 'down';
  readonly mayMove: Rational;
};

function endIn(
  amount: Amount,
  from: UnitId,
  to: UnitId,
  mode: 'up' | 'down',
  largest: Amount = amount,
): End {
  const value = exactlyIn(exactValue(amount), from, to);
  const step = stepIn(amount, from, to);
  const size = exactlyIn(exactValue(largest), from, to);
  const byRange = allowance(size, step, to);
  // However wide the range, an end moves by no more than a tenth of itself: 1..13 ft begins at 310 mm, not at 400.
  const hasShare = value.n !== 0n && unitRow(to).kind !== 'temperature';
  const ownShare = exact.multiply(exact.absolute(value), tenth);
  return { value, step, mode, mayMove: hasShare ? exact.smaller(byRange, ownShare) : byRange };
}

const tenth = exact.fromDecimal('0.1');

function largestOf(low: Amount, high: Amount): Amount {
  return Math.abs(low.value) > Math.abs(high.value) ? low : high;
}

function roundedEnd(end: End, place: number): Rational {
  return exact.roundTo(end.value, place, end.mode);
}

function isCloseEnough(end: End, place: number): boolean {
  const moved = exact.absolute(exact.subtract(roundedEnd(end, place), end.value));
  return exact.compare(moved, end.mayMove) <= 0;
}
