import { allOf, anyOf, type MachineCondition } from '../applicability/index.ts';

/** The attribute of an element that goes where a machine is chosen that it is not for; none where it is always there. */
export function shownWhen(...conditions: readonly (MachineCondition | undefined)[]): {
  readonly dataWhen?: string;
} {
  const all = allOf(conditions);
  return all === undefined ? {} : { dataWhen: JSON.stringify(all) };
}

/** The same for what is there for any of several conditions. */
export const shownWhenAny = (conditions: readonly (MachineCondition | undefined)[]) =>
  shownWhen(anyOf(conditions));

/** The attribute of words that go where the machine that they speak of is chosen. */
export function saidUnless(condition: MachineCondition | undefined): {
  readonly dataUnless?: string;
} {
  return condition === undefined ? {} : { dataUnless: JSON.stringify(condition) };
}

/**
 * The attribute of words such as "5 steps", of which some are for some machines only: the number of those that
 * are for all, then the condition of each of the others.
 */
export function saidCount(conditions: readonly (MachineCondition | undefined)[]): {
  readonly dataCount?: string;
} {
  const count = stepCount(conditions);
  return count.length === 1 ? {} : { dataCount: JSON.stringify(count) };
}

/** How many steps a job has: those for all machines, then the condition of each of the others. */
export type StepCount = readonly [always: number, ...MachineCondition[]];

export function stepCount(conditions: readonly (MachineCondition | undefined)[]): StepCount {
  const some = conditions.filter((one) => one !== undefined);
  return [conditions.length - some.length, ...some];
}
