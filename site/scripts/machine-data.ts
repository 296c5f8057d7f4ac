import type { MachineChoice, MachineCondition } from '../../src/applicability/machine-condition.ts';
import { readMachineCondition } from '../../src/applicability/read-machine-condition.ts';
import { jsonIn } from '../../src/source/json-in.ts';

/** What the machines of a manual differ in, as a page carries it; undefined where the text is nothing of the kind. */
export function readMachineChoice(text: string): MachineChoice | undefined {
  const { attributes, never } = fieldsOf(jsonIn(text));
  if (!Array.isArray(attributes) || !Array.isArray(never)) return undefined;
  return {
    attributes: attributes.flatMap((one: unknown) => attributeFrom(one) ?? []),
    never: never.map(readMachineCondition).filter((one) => one !== undefined),
  };
}

/** How many steps there are: so many for every machine, and one more for each condition that holds. */
export interface StepCount {
  readonly always: number;
  readonly sometimes: readonly MachineCondition[];
}

/** A count as a page carries it; none where the text is nothing of the kind. */
export function readStepCount(text: string | undefined): StepCount {
  const data = jsonIn(text ?? '');
  const [count, ...others]: readonly unknown[] = Array.isArray(data) ? data : [];
  return {
    always: typeof count === 'number' ? count : 0,
    sometimes: others.map(readMachineCondition).filter((one) => one !== undefined),
  };
}

function attributeFrom(data: unknown): MachineChoice['attributes'][number] | undefined {
  const { id, name, values } = fieldsOf(data);
  if (typeof id !== 'string' || typeof name !== 'string' || !Array.isArray(values))
    return undefined;
  return { id, name, values: values.filter((value) => typeof value === 'string') };
}

function fieldsOf(data: unknown): Readonly<Record<string, unknown>> {
  return typeof data === 'object' && data !== null ? { ...data } : {};
}
