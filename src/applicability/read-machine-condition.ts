import type { MachineCondition } from './machine-condition.ts';

/** A condition out of the JSON that a page carries; undefined where it is none. */
export function readMachineCondition(data: unknown): MachineCondition | undefined {
  if (!Array.isArray(data)) return undefined;
  const [kind, ...rest]: readonly unknown[] = data;
  switch (kind) {
    case '?':
      return ['?'];
    case '=': {
      const [attribute, ...values] = rest.filter((one) => typeof one === 'string');
      return attribute === undefined || values.length + 1 < rest.length
        ? undefined
        : ['=', attribute, ...values];
    }
    case '!': {
      const inner = readMachineCondition(rest[0]);
      return inner && ['!', inner];
    }
    case '&':
    case '|': {
      const parts = rest.map(readMachineCondition).filter((part) => part !== undefined);
      return parts.length < rest.length ? undefined : [kind, ...parts];
    }
    default:
      return undefined;
  }
}
