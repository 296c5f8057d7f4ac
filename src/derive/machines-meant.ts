import {
  type Condition,
  resolveCondition,
  type Space,
  type VariantSet,
} from '../applicability/index.ts';

/**
 * Of the machines in `under` those that a condition can hold for. What the technician finds decides no
 * machine, so that such a part of a condition leaves all of them, as does a name that the manual does not have.
 */
export function machinesMeant(
  space: Space,
  condition: Condition | undefined,
  under: VariantSet,
): VariantSet {
  if (condition === undefined) return under;
  if (condition.kind === 'all') {
    return condition.of.reduce((set, part) => machinesMeant(space, part, set), under);
  }
  return space.and(under, resolveCondition(space, condition).value);
}
