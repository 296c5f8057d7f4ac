import { type Bound, boundsOf } from './bounds.ts';
import { differenceIn, exactlyIn } from './exact-conversion.ts';
import type { Measure, Quantity } from './quantity.ts';
import {
  absolute,
  compare,
  floorLog10,
  fromDecimal,
  larger,
  multiply,
  powerOfTen,
  type Rational,
  smaller,
  subtract,
  zero,
} from './rational.ts';
import { kindOfUnit, type UnitId } from './unit.ts';

/**
 * - `agrees`: either may be the other one rounded.
 * - `unsafe`: as near as rounding brings it, but a maximum went up or a minimum down.
 * - `disagrees`: no rounding explains it.
 * - `unclear`: of different forms (an amount and a range), which cannot be compared.
 */
export type PairVerdict = 'agrees' | 'unsafe' | 'disagrees' | 'unclear';

/**
 * Whether two quantities of one kind can be one value, said twice. Neither is taken to be right: the second may be the
 * first, converted and rounded, or the other way round (implied precision, NIST SP 811 (2008), B.7). Rounding moves a
 * value by half a step of the last written place; an end of a range by a whole step inwards. Zeros at the end of a
 * whole number may be rounding too, as far as they move it by no more than 2.5 %. A tenth apart is never rounding.
 */
export function judgePair(first: Quantity, second: Quantity): PairVerdict {
  if (first.form !== 'torque-angle' && second.form !== 'torque-angle')
    return judgeMeasures(first, second);
  if (first.form !== 'torque-angle' || second.form !== 'torque-angle') return 'unclear';
  const torques = judgeMeasures(first.torque, second.torque);
  return torques === 'agrees' ? judgeMeasures(first.angle, second.angle) : torques;
}

function judgeMeasures(first: Measure, second: Measure): PairVerdict {
  if (isBand(first) !== isBand(second)) return 'unclear';
  if (first.form === 'limit' || second.form === 'limit') return judgeLimits(first, second);
  const [one, two] = [boundsOf(first), boundsOf(second)];
  const units = { from: second.unit, to: first.unit };
  const lows = endsOf(one.low, two.low, units);
  const highs = endsOf(one.high, two.high, units);
  if (lows === undefined || highs === undefined) return 'unclear';
  const inwards = isBand(first);
  const size = larger(sizeOf(lows), sizeOf(highs));
  const isLow = mayBeRounded(lows, inwards ? 'up' : 'any', size);
  const isHigh = mayBeRounded(highs, inwards ? 'down' : 'any', size);
  return isLow && isHigh ? 'agrees' : 'disagrees';
}

const isBand = ({ form }: Measure): boolean => form === 'range' || form === 'tolerance';

function judgeLimits(first: Measure, second: Measure): PairVerdict {
  if (first.form !== 'limit' || second.form !== 'limit' || first.limit !== second.limit)
    return 'unclear';
  const [one, two] = [boundsOf(first), boundsOf(second)];
  const units = { from: second.unit, to: first.unit };
  const isMaximum = first.limit === 'max';
  const ends = isMaximum ? endsOf(one.high, two.high, units) : endsOf(one.low, two.low, units);
  if (ends === undefined) return 'unclear';
  if (!mayBeRounded(ends, isMaximum ? 'down' : 'up', sizeOf(ends))) return 'disagrees';
  const over = isMaximum ? subtract(ends.second, ends.first) : subtract(ends.first, ends.second);
  return compare(over, leeway(ends, first.unit)) > 0 ? 'unsafe' : 'agrees';
}

/** What no gauge shows: a thousandth of the limit. */
function leeway({ first }: Ends, unit: UnitId): Rational {
  return kindOfUnit(unit) === 'temperature'
    ? fromDecimal('0.05')
    : multiply(absolute(first), fromDecimal('0.001'));
}

/** Two readings in the unit of the first, with the step that each is written to. */
type Ends = {
  readonly first: Rational;
  readonly second: Rational;
  readonly step: Rational;
  /** The same with the zeros at the end of whole numbers taken for rounding. */
  readonly roundStep: Rational;
  readonly isTemperature: boolean;
};

function endsOf(
  first: Bound | undefined,
  second: Bound | undefined,
  { from, to }: { readonly from: UnitId; readonly to: UnitId },
): Ends | undefined {
  if (first === undefined || second === undefined) return undefined;
  return {
    first: first.value,
    second: exactlyIn(second.value, from, to),
    step: larger(first.step, differenceIn(second.step, from, to)),
    roundStep: larger(roundStep(first), differenceIn(roundStep(second), from, to)),
    isTemperature: kindOfUnit(to) === 'temperature',
  };
}

/** 700 may be rounded to hundreds, 750 to tens; 0.5 and 0 are what they are. */
function roundStep({ value, step }: Bound): Rational {
  if (value.d !== 1n || value.n === 0n || compare(step, powerOfTen(0)) !== 0) return step;
  let place = 0;
  const size = absolute(value);
  while (place < floorLog10(size) && size.n % 10n ** BigInt(place + 1) === 0n) place += 1;
  return powerOfTen(place);
}

const half = fromDecimal('0.5');
const tenth = fromDecimal('0.1');
const mostByZeros = fromDecimal('0.025');

const sizeOf = ({ first, second }: Ends): Rational => larger(absolute(first), absolute(second));

/** `size` is that of the larger end: the bottom of a band may be next to nothing. */
function mayBeRounded(ends: Ends, inwards: 'up' | 'down' | 'any', size: Rational): boolean {
  const moved = subtract(ends.second, ends.first);
  const apart = absolute(moved);
  if (!ends.isTemperature && compare(apart, multiply(size, tenth)) > 0) return false;
  const isInwards =
    inwards === 'up' ? moved.n >= zero.n : inwards === 'down' ? moved.n <= zero.n : false;
  const share = isInwards ? fromDecimal('1') : half;
  if (compare(apart, multiply(ends.step, share)) <= 0) return true;
  if (ends.isTemperature) return false;
  const byZeros = smaller(multiply(ends.roundStep, share), multiply(size, mostByZeros));
  return compare(apart, byZeros) <= 0;
}
