import { type Amount, computedAmount, exactStep, exactValue } from './amount.ts';
import { differenceIn, exactlyIn } from './exact-conversion.ts';
import { kindOf, type Measure, type Quantity, type Torque } from './quantity.ts';
import { toNumber } from './rational.ts';
import { isUnitOf, kindOfUnit, type UnitId } from './unit.ts';
import type { UnitKind } from './unit-kind.ts';

/** A unit was asked for that measures something else than the quantity. */
export type KindMismatch = {
  readonly code: 'kind-mismatch';
  readonly kind: UnitKind;
  readonly unit: UnitId;
  readonly unitKind: UnitKind;
};

export type Converted =
  | { readonly value: Quantity; readonly problems: readonly [] }
  | { readonly value?: undefined; readonly problems: readonly [KindMismatch] };

/**
 * The same quantity in another unit, to the nearest double, not rounded for print; the fineness goes along. Of a
 * torque with an angle the torque is converted.
 */
export function convert(quantity: Quantity, unit: UnitId): Converted {
  const mismatch = kindMismatch(quantity, unit);
  if (mismatch) return { problems: [mismatch] };
  if (quantity.form !== 'torque-angle') return { value: measureIn(quantity, unit), problems: [] };
  const torque = isUnitOf(unit, 'torque') ? torqueIn(quantity.torque, unit) : quantity.torque;
  return { value: { ...quantity, torque }, problems: [] };
}

export function kindMismatch(quantity: Quantity, unit: UnitId): KindMismatch | undefined {
  const kind = kindOf(quantity);
  const unitKind = kindOfUnit(unit);
  return kind === unitKind ? undefined : { code: 'kind-mismatch', kind, unit, unitKind };
}

function torqueIn<U extends Torque['unit']>(torque: Torque, unit: U): Measure<U> {
  return measureIn(torque, unit);
}

function measureIn<U extends UnitId>(measure: Measure, unit: U): Measure<U> {
  const from = measure.unit;
  switch (measure.form) {
    case 'single':
    case 'limit':
      return { ...measure, unit, amount: amountIn(measure.amount, from, unit) };
    case 'range':
      return {
        ...measure,
        unit,
        low: amountIn(measure.low, from, unit),
        high: amountIn(measure.high, from, unit),
      };
    case 'tolerance':
      return {
        ...measure,
        unit,
        amount: amountIn(measure.amount, from, unit),
        tolerance:
          measure.by === 'share'
            ? measure.tolerance
            : differenceAmountIn(measure.tolerance, from, unit),
      };
  }
}

function amountIn(amount: Amount, from: UnitId, to: UnitId): Amount {
  if (from === to) return amount;
  const value = toNumber(exactlyIn(exactValue(amount), from, to));
  return computedAmount(value, toNumber(differenceIn(exactStep(amount), from, to)));
}

function differenceAmountIn(amount: Amount, from: UnitId, to: UnitId): Amount {
  if (from === to) return amount;
  const value = toNumber(differenceIn(exactValue(amount), from, to));
  return computedAmount(value, toNumber(differenceIn(exactStep(amount), from, to)));
}
