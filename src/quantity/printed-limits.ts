import { printedMeasure } from './print-quantity.ts';
import type { Quantity } from './quantity.ts';
import {
  add,
  fraction,
  fromDecimal,
  multiply,
  type Rational,
  subtract,
  toNumber,
} from './rational.ts';
import type { RoundedMeasure } from './rounding.ts';
import type { UnitId } from './unit.ts';
import { firstUnit, type UnitPolicy } from './unit-policy.ts';

/** Between which numbers a reading must lie, in the unit that is printed first. */
export interface PrintedLimits {
  readonly unit: UnitId;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/**
 * The limits of a quantity as a sheet prints them, so that whoever holds a reading against them comes to the
 * same answer as whoever reads the sheet. Undefined for a plain value, which leaves open how close is close
 * enough, for a torque with an angle, and for numbers printed as fractions.
 */
export function printedLimits(quantity: Quantity, policy: UnitPolicy): PrintedLimits | undefined {
  if (quantity.form === 'torque-angle') return undefined;
  const unit = firstUnit(quantity, policy);
  const ends = endsOf(printedMeasure(quantity, unit));
  if (ends === undefined) return undefined;
  const { low, high } = ends;
  return { unit, low: low && toNumber(low), high: high && toNumber(high) };
}

type Ends = { readonly low?: Rational | undefined; readonly high?: Rational | undefined };

function endsOf(printed: RoundedMeasure): Ends | undefined {
  switch (printed.form) {
    case 'single':
      return undefined;
    case 'limit': {
      const end = decimal(printed.amount);
      if (end === undefined) return undefined;
      return printed.limit === 'max' ? { high: end } : { low: end };
    }
    case 'range': {
      const [low, high] = [decimal(printed.low), decimal(printed.high)];
      return low && high && { low, high };
    }
    case 'tolerance': {
      const [middle, given] = [decimal(printed.amount), decimal(printed.tolerance)];
      if (middle === undefined || given === undefined) return undefined;
      const width = printed.by === 'share' ? multiply(middle, multiply(given, percent)) : given;
      return { low: subtract(middle, width), high: add(middle, width) };
    }
  }
}

const percent = fraction(1n, 100n);

const decimal = (text: string): Rational | undefined =>
  /^-?\d+(\.\d+)?$/.test(text) ? fromDecimal(text) : undefined;
