import { type Amount, exactStep } from './amount.ts';
import { differenceIn } from './exact-conversion.ts';
import * as exact from './rational.ts';
import { type UnitId, unitRow } from './unit.ts';

type Rational = exact.Rational;

const two = exact.fromDecimal('2');
const half = exact.fromDecimal('0.5');
const mostOfSize = exact.fromDecimal('0.025');

/** Digits beyond the first place that may be added before the search gives up: 12 decimals finer than written. */
const mostExtraDigits = 12;

/** The place to round to: the coarsest power of ten that is not above twice the written step (in the target unit). */
export function firstPlace(step: Rational, unit: UnitId): number {
  const place = exact.floorLog10(exact.multiply(step, two));
  return Math.min(place, unitRow(unit).coarsestPlace ?? place);
}

/** The first place from `start` on, ever finer, that is fine enough. */
export function finerUntil(start: number, isFineEnough: (place: number) => boolean): number {
  let place = start;
  while (!isFineEnough(place) && place > start - mostExtraDigits) place -= 1;
  return place;
}

/**
 * How far a printed number may lie from the exact one: the rounding error of a number with this step, and 2.5 % of the
 * size. A share of a temperature reading means nothing, so there only the rounding error counts.
 */
export function allowance(size: Rational, step: Rational, unit: UnitId): Rational {
  const roundingError = exact.multiply(step, half);
  if (unitRow(unit).kind === 'temperature') return roundingError;
  return exact.smaller(roundingError, exact.multiply(exact.absolute(size), mostOfSize));
}

export function stepIn(amount: Amount, from: UnitId, to: UnitId): Rational {
  return differenceIn(exactStep(amount), from, to);
}

export function textAt(value: Rational, place: number, mode: exact.RoundingMode): string {
  return exact.decimalText(exact.roundTo(value, place, mode), place);
}
