import { exactStep, exactValue } from './amount.ts';
import type { Measure } from './quantity.ts';
import {
  absolute,
  add,
  fromDecimal,
  larger,
  multiply,
  type Rational,
  subtract,
} from './rational.ts';

/** One end of what a measure allows, in the measure's own unit, with the fineness it was written to. */
export type Bound = { readonly value: Rational; readonly step: Rational };

/** What a measure allows: a single amount is both its ends, a limit has only one. */
export type Bounds = { readonly low?: Bound; readonly high?: Bound };

export function boundsOf(measure: Measure): Bounds {
  switch (measure.form) {
    case 'single': {
      const bound = { value: exactValue(measure.amount), step: exactStep(measure.amount) };
      return { low: bound, high: bound };
    }
    case 'limit': {
      const bound = { value: exactValue(measure.amount), step: exactStep(measure.amount) };
      return measure.limit === 'max' ? { high: bound } : { low: bound };
    }
    case 'range':
      return {
        low: { value: exactValue(measure.low), step: exactStep(measure.low) },
        high: { value: exactValue(measure.high), step: exactStep(measure.high) },
      };
    case 'tolerance': {
      const value = exactValue(measure.amount);
      // A share of the amount is a hundredth of it for each percent.
      const scale =
        measure.by === 'share' ? multiply(absolute(value), fromDecimal('0.01')) : fromDecimal('1');
      const width = multiply(exactValue(measure.tolerance), scale);
      const step = larger(exactStep(measure.amount), multiply(exactStep(measure.tolerance), scale));
      return {
        low: { value: subtract(value, width), step },
        high: { value: add(value, width), step },
      };
    }
  }
}
