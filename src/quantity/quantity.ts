import type { Amount } from './amount.ts';
import { isUnitOf, kindOfUnit, type UnitId, type UnitOf } from './unit.ts';
import type { UnitKind } from './unit-kind.ts';

/** `22 N·m` */
export type Single<U extends UnitId = UnitId> = {
  readonly form: 'single';
  readonly unit: U;
  readonly amount: Amount;
};

/** `22 ± 2 N·m`, or `22 N·m ± 10 %` when the tolerance is a share of the amount. */
export type Tolerance<U extends UnitId = UnitId> = {
  readonly form: 'tolerance';
  readonly unit: U;
  readonly amount: Amount;
  readonly by: 'amount' | 'share';
  readonly tolerance: Amount;
};

/** `20..24 N·m`; low is below high. */
export type Range<U extends UnitId = UnitId> = {
  readonly form: 'range';
  readonly unit: U;
  readonly low: Amount;
  readonly high: Amount;
};

/** `max 5 bar`, `min 2 mm` */
export type Limit<U extends UnitId = UnitId> = {
  readonly form: 'limit';
  readonly unit: U;
  readonly limit: 'max' | 'min';
  readonly amount: Amount;
};

/** One measured thing in one unit. */
export type Measure<U extends UnitId = UnitId> = Single<U> | Tolerance<U> | Range<U> | Limit<U>;

export type Torque = Measure<UnitOf<'torque'>>;
export type Angle = Measure<UnitOf<'angle'>>;

/** `60 N·m + 90°`: tighten to the torque, then turn on by the angle. */
export type TorqueAngle = {
  readonly form: 'torque-angle';
  readonly torque: Torque;
  readonly angle: Angle;
};

/** Anything a writer may give as a value with a unit. Plain JSON. */
export type Quantity = Measure | TorqueAngle;

export function kindOf(quantity: Quantity): UnitKind {
  return kindOfUnit(mainUnit(quantity));
}

/** The unit of a measure, the torque unit of a torque with an angle. */
export function mainUnit(quantity: Quantity): UnitId {
  return quantity.form === 'torque-angle' ? quantity.torque.unit : quantity.unit;
}

export function isMeasureOf<K extends UnitKind>(
  quantity: Quantity,
  kind: K,
): quantity is Measure<UnitOf<K>> {
  return quantity.form !== 'torque-angle' && isUnitOf(quantity.unit, kind);
}
