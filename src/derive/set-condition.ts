import {
  type MachineCondition,
  machineCondition,
  type Space,
  type VariantSet,
} from '../applicability/index.ts';

/** Which of the machines in `within` are in a set, as plain JSON; undefined for all, and for a set that takes too many words. */
export function setCondition(
  set: VariantSet,
  within: VariantSet,
  space: Space,
): MachineCondition | undefined {
  const condition = space.describe(set, within);
  return condition === 'too-long' ? undefined : machineCondition(condition, space);
}
