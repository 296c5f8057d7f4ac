export { type Amount, computedAmount, writtenAmount } from './amount.ts';
export { type ContainerCount, containersFor } from './containers.ts';
export { type Converted, convert, type KindMismatch } from './convert.ts';
export { describeProblem } from './describe-problem.ts';
export { mostOf, percentOf, singleOf } from './exact-amount.ts';
export { findPairs, type QuantityPair } from './find-pairs.ts';
export { type FoundQuantity, findQuantities } from './find-quantities.ts';
export { judgePair, type PairVerdict } from './judge-pair.ts';
export { type ParsedQuantity, parseQuantity } from './parse-quantity.ts';
export {
  type ParsedTorqueSpec,
  parseTorqueSpec,
  type TorqueProblem,
  type TorqueSpec,
  type TorqueStage,
} from './parse-torque-spec.ts';
export {
  type Printed,
  type PrintUnits,
  printAsWritten,
  printPieces,
  printQuantity,
  type QuantityPieces,
} from './print-quantity.ts';
export { type PrintedLimits, printedLimits } from './printed-limits.ts';
export {
  isOnlySpelling,
  type QuantityFault,
  type QuantityProblem,
  type Stretch,
} from './problem.ts';
export {
  type Angle,
  isMeasureOf,
  kindOf,
  type Limit,
  type Measure,
  mainUnit,
  type Quantity,
  type Range,
  type Single,
  type Tolerance,
  type Torque,
  type TorqueAngle,
} from './quantity.ts';
export { add, compare, type Rational, smaller, subtract, toNumber, zero } from './rational.ts';
export { type Canonical, type CanonicalBound, canonical, sameQuantity } from './same-quantity.ts';
export { toUcum, type UcumMeasure, type UcumQuantity } from './ucum.ts';
export {
  isUnitId,
  isUnitOf,
  kindOfUnit,
  sameFamily,
  type UnitId,
  type UnitOf,
  unitIds,
  unitRow,
  unitSize,
} from './unit.ts';
export { isUnitKind, type UnitKind, unitKinds } from './unit-kind.ts';
export { lookUpUnit, type UnitName } from './unit-lookup.ts';
export {
  defaultUnitPolicy,
  type PolicyEntry,
  type PolicyOverrides,
  type PolicyProblem,
  piecesByPolicy,
  printByPolicy,
  type UnitPolicy,
  unitPolicy,
} from './unit-policy.ts';
export type { UnitRow } from './unit-table.ts';
