import { add, divide, fromDecimal, multiply, type Rational, subtract, zero } from './rational.ts';
import { exactSize, type UnitId, unitRow } from './unit.ts';

/** A reading in one unit as a reading in another of the same kind, exactly; temperatures shift their zero. */
export function exactlyIn(value: Rational, from: UnitId, to: UnitId): Rational {
  if (from === to) return value;
  const inBase = multiply(subtract(value, zeroOf(from)), exactSize(from));
  return add(divide(inBase, exactSize(to)), zeroOf(to));
}

/** A difference, step or tolerance in another unit: no shift of zero. */
export function differenceIn(value: Rational, from: UnitId, to: UnitId): Rational {
  return from === to ? value : divide(multiply(value, exactSize(from)), exactSize(to));
}

/** A reading in the base unit of its kind. */
export function exactlyInBase(value: Rational, from: UnitId): Rational {
  return multiply(subtract(value, zeroOf(from)), exactSize(from));
}

function zeroOf(unit: UnitId): Rational {
  const { zeroAt } = unitRow(unit);
  return zeroAt === undefined ? zero : fromDecimal(zeroAt);
}
