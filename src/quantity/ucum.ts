import { boundsOf } from './bounds.ts';
import type { Measure, Quantity } from './quantity.ts';
import { toNumber } from './rational.ts';
import { unitRow } from './unit.ts';

/** A measure for machines: plain numbers and a UCUM code. `value` is the nominal amount, `low` and `high` the bounds. */
export type UcumMeasure =
  | { readonly form: 'single'; readonly value: number; readonly unit: string }
  | {
      readonly form: 'tolerance';
      readonly value: number;
      readonly low: number;
      readonly high: number;
      readonly unit: string;
    }
  | { readonly form: 'range'; readonly low: number; readonly high: number; readonly unit: string }
  | { readonly form: 'min'; readonly low: number; readonly unit: string }
  | { readonly form: 'max'; readonly high: number; readonly unit: string };

export type UcumQuantity =
  | UcumMeasure
  | { readonly form: 'torque-angle'; readonly torque: UcumMeasure; readonly angle: UcumMeasure };

/** A quantity in its author's unit with the UCUM code of that unit. */
export function toUcum(quantity: Quantity): UcumQuantity {
  if (quantity.form !== 'torque-angle') return measureToUcum(quantity);
  const { form, torque, angle } = quantity;
  return { form, torque: measureToUcum(torque), angle: measureToUcum(angle) };
}

function measureToUcum(measure: Measure): UcumMeasure {
  const unit = unitRow(measure.unit).ucum;
  switch (measure.form) {
    case 'single':
      return { form: 'single', value: measure.amount.value, unit };
    case 'range':
      return { form: 'range', low: measure.low.value, high: measure.high.value, unit };
    case 'limit':
      return measure.limit === 'max'
        ? { form: 'max', high: measure.amount.value, unit }
        : { form: 'min', low: measure.amount.value, unit };
    case 'tolerance': {
      const value = measure.amount.value;
      const { low, high } = boundsOf(measure);
      return {
        form: 'tolerance',
        value,
        low: low ? toNumber(low.value) : value,
        high: high ? toNumber(high.value) : value,
        unit,
      };
    }
  }
}
