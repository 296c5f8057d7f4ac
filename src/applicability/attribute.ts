/** One thing in which the machines of a manual differ, with the values it can take, in the manual's order. */
export interface Attribute {
  readonly id: string;
  readonly values: readonly [string, ...string[]];
}

/**
 * One way through a branch of the work. `label` is the finding that leads there, in the writer's words
 * ("the belt is cracked"); at most one way has none, and is then said as "not" all the others.
 */
export interface Way {
  readonly value: string;
  readonly label?: string;
}

/** An attribute that the work itself adds: what the technician finds decides its value. */
export interface FreshAttribute extends Attribute {
  readonly label: string;
  readonly ways: readonly [Way, ...Way[]];
}

/** True for an attribute whose values are `yes` and `no`, in either order: its bare name means `yes`. */
export function isYesNo(attribute: Attribute): boolean {
  const { values } = attribute;
  return values.length === 2 && values.includes('yes') && values.includes('no');
}
