import { type Bound, type Bounds, boundsOf } from './bounds.ts';
import { exactlyInBase } from './exact-conversion.ts';
import { type Measure, mainUnit, type Quantity } from './quantity.ts';
import {
  absolute,
  compare,
  fromDecimal,
  larger,
  multiply,
  type Rational,
  subtract,
  toNumber,
  zero,
} from './rational.ts';
import { exactSize, kindOfUnit, type UnitId } from './unit.ts';
import type { UnitKind } from './unit-kind.ts';

/** One end in the base unit of the kind, with the size of its last written place. */
export type CanonicalBound = { readonly value: number; readonly step: number };

/** A quantity as its bounds in the base unit of its kind: one shape for every form and unit. */
export type Canonical = {
  readonly kind: UnitKind;
  readonly low?: CanonicalBound;
  readonly high?: CanonicalBound;
  /** The further turn after a torque, in degrees. */
  readonly angle?: { readonly low?: CanonicalBound; readonly high?: CanonicalBound };
};

export function canonical(quantity: Quantity): Canonical {
  const kind = kindOfUnit(mainUnit(quantity));
  if (quantity.form !== 'torque-angle') return { kind, ...canonicalBounds(quantity) };
  return {
    kind,
    ...canonicalBounds(quantity.torque),
    angle: canonicalBounds(quantity.angle),
  };
}

/**
 * Whether two quantities say the same. In one unit their bounds must be the same numbers: 22 ± 2 N·m and 20..24 N·m.
 * In two units they must agree when rounded to the coarser of the two written precisions: 60 N·m and 44 lbf·ft do, 46
 * lbf·ft does not. A bound on one side only never agrees. However coarsely they are written, a tenth apart is never the
 * same: 1 US pt is not 1 imp pt.
 */
export function sameQuantity(a: Quantity, b: Quantity): boolean {
  if (a.form === 'torque-angle' || b.form === 'torque-angle')
    return (
      a.form === 'torque-angle' &&
      b.form === 'torque-angle' &&
      sameMeasure(a.torque, b.torque) &&
      sameMeasure(a.angle, b.angle)
    );
  return sameMeasure(a, b);
}

function sameMeasure(a: Measure, b: Measure): boolean {
  if (kindOfUnit(a.unit) !== kindOfUnit(b.unit)) return false;
  const [one, two] = [boundsInBase(a), boundsInBase(b)];
  const most = mostApart(a.unit, b.unit, one, two);
  return sameBound(one.low, two.low, most) && sameBound(one.high, two.high, most);
}

const half = fromDecimal('0.5');
const tenth = fromDecimal('0.1');

function sameBound(
  a: Bound | undefined,
  b: Bound | undefined,
  most: Rational | undefined,
): boolean {
  if (!a || !b) return a === b;
  const apart = absolute(subtract(a.value, b.value));
  if (most && compare(apart, most) > 0) return false;
  return compare(apart, multiply(larger(a.step, b.step), half)) <= 0;
}

/** Nothing in one unit, else a tenth of the largest reading in either; of a temperature a tenth means nothing. */
function mostApart(a: UnitId, b: UnitId, ...all: readonly Bounds[]): Rational | undefined {
  if (a === b) return zero;
  if (kindOfUnit(a) === 'temperature') return undefined;
  const sizes = all.flatMap(({ low, high }) => [low, high]).flatMap((bound) => bound ?? []);
  return multiply(sizes.map(({ value }) => absolute(value)).reduce(larger, zero), tenth);
}

function boundsInBase(measure: Measure): Bounds {
  const { low, high } = boundsOf(measure);
  return { low: low && inBase(low, measure.unit), high: high && inBase(high, measure.unit) };
}

function inBase({ value, step }: Bound, unit: UnitId): Bound {
  return { value: exactlyInBase(value, unit), step: multiply(step, exactSize(unit)) };
}

function canonicalBounds(measure: Measure) {
  const { low, high } = boundsInBase(measure);
  return { ...(low && { low: numbers(low) }), ...(high && { high: numbers(high) }) };
}

function numbers({ value, step }: { value: Rational; step: Rational }): CanonicalBound {
  return { value: toNumber(value), step: toNumber(step) };
}
