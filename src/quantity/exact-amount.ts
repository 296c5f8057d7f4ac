import { computedAmount } from './amount.ts';
import { boundsOf } from './bounds.ts';
import { exactlyInBase } from './exact-conversion.ts';
import type { Measure, Single } from './quantity.ts';
import { divide, fraction, multiply, type Rational, toNumber } from './rational.ts';
import { exactSize, type UnitId } from './unit.ts';

/** The most that a measure allows, exactly, in the base unit of its kind (volume: L, mass: kg); of `min 5 L` the 5 L. */
export function mostOf(measure: Measure): Rational {
  const { low, high } = boundsOf(measure);
  const most = high ?? low;
  if (most === undefined) throw new RangeError('a measure without bounds');
  return exactlyInBase(most.value, measure.unit);
}

/**
 * An exact amount in the base unit of its kind as a value in a unit, for print. It is taken as fine as
 * `step` (in that unit) says, or ten times finer where it does not come out even: half of 5 L is 2.5 L.
 */
export function singleOf<U extends UnitId>(base: Rational, unit: U, step: number): Single<U> {
  const value = toNumber(divide(base, exactSize(unit)));
  const steps = value / step;
  const isEven = Math.abs(steps - Math.round(steps)) < 1e-9;
  return { form: 'single', unit, amount: computedAmount(value, isEven ? step : step / 10) };
}

/** A share in percent of an exact amount. */
export function percentOf(base: Rational, percent: Rational): Rational {
  return multiply(multiply(base, percent), fraction(1n, 100n));
}
