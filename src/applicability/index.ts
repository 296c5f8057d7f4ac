export { type Attribute, type FreshAttribute, isYesNo, type Way } from './attribute.ts';
export type {
  BareTest,
  Condition,
  Found,
  Group,
  Name,
  Never,
  Not,
  Span,
  Test,
} from './condition.ts';
export {
  type ConditionMeaningProblem,
  type ConditionProblem,
  type ConditionSyntaxProblem,
  describeConditionProblem,
} from './condition-problem.ts';
export { createSpace } from './create-space.ts';
export type { Description } from './describe.ts';
export {
  allOf,
  anyOf,
  type MachineChoice,
  type MachineCondition,
  machineCondition,
} from './machine-condition.ts';
export { type ParsedCondition, parseCondition } from './parse-condition.ts';
export { type Part, PartitionMap } from './partition-map.ts';
export { printCondition } from './print-condition.ts';
export { readMachineCondition } from './read-machine-condition.ts';
export { type ResolvedCondition, resolveCondition } from './resolve-condition.ts';
export type { Assignment, Space } from './space.ts';
export { describeSpaceProblem, type SpaceProblem } from './space-problem.ts';
export type { VariantSet } from './variant-set.ts';
