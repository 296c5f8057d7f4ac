import { divide, fromDecimal, multiply, type Rational, toNumber } from './rational.ts';
import type { UnitKind } from './unit-kind.ts';
import { type UnitRow, unitTable } from './unit-table.ts';

/** A unit by the spelling that is printed, such as `N·m` or `US qt`. */
export type UnitId = keyof typeof unitTable;

/** The units of one kind. */
export type UnitOf<K extends UnitKind> = {
  [U in UnitId]: (typeof unitTable)[U]['kind'] extends K ? U : never;
}[UnitId];

/** Every unit in table order. */
export const unitIds: readonly UnitId[] = Object.keys(unitTable).filter(isUnitId);

export function isUnitId(text: string): text is UnitId {
  return Object.hasOwn(unitTable, text);
}

export function unitRow(unit: UnitId): UnitRow {
  return unitTable[unit];
}

export function kindOfUnit(unit: UnitId): UnitKind {
  return unitTable[unit].kind;
}

export function isUnitOf<K extends UnitKind>(unit: UnitId, kind: K): unit is UnitOf<K> {
  return kindOfUnit(unit) === kind;
}

/** Whether two units differ only by a power of ten that readers take in their stride (mL and L, not bar and kPa). */
export function sameFamily(a: UnitId, b: UnitId): boolean {
  const family = unitRow(a).family;
  return a === b || (family !== undefined && family === unitRow(b).family);
}

/** The exact size of a unit in the base unit of its kind. */
export function exactSize(unit: UnitId): Rational {
  return sizes.get(unit) ?? product(unitRow(unit));
}

/** Size of a unit in the base unit of its kind: 25.4 for an inch, in mm. */
export function unitSize(unit: UnitId): number {
  return toNumber(exactSize(unit));
}

const sizes: ReadonlyMap<UnitId, Rational> = new Map(
  unitIds.map((unit) => [unit, product(unitRow(unit))]),
);

function product({ size }: UnitRow): Rational {
  const above = size.times.map(fromDecimal).reduce(multiply);
  return (size.over ?? []).map(fromDecimal).reduce(divide, above);
}
