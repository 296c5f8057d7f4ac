import { isYesNo } from './attribute.ts';
import type { Condition } from './condition.ts';
import type { Space } from './space.ts';

/**
 * A condition as plain JSON, for a page that knows the machine only later. `=` holds for one of the values, `&`
 * for all parts, `|` for any part; `?` is what no choice of a machine decides: a finding, or a name that the
 * manual does not have.
 */
export type MachineCondition =
  | readonly ['=', attribute: string, ...values: string[]]
  | readonly ['!', MachineCondition]
  | readonly ['&' | '|', ...MachineCondition[]]
  | readonly ['?'];

/** What the machines of a manual differ in, as plain JSON, for a reader who says which one is meant. */
export interface MachineChoice {
  readonly attributes: readonly {
    readonly id: string;
    readonly name: string;
    readonly values: readonly string[];
  }[];
  /** What no machine meets. */
  readonly never: readonly MachineCondition[];
}

/** The machines for which a condition holds; undefined where the choice of a machine decides nothing of it. */
export function machineCondition(
  condition: Condition | undefined,
  space: Space,
): MachineCondition | undefined {
  if (condition === undefined) return undefined;
  const encoded = encode(condition, space);
  return isDecided(encoded) ? encoded : undefined;
}

/** What holds where all of several conditions hold; an absent one always does. */
export function allOf(
  conditions: readonly (MachineCondition | undefined)[],
): MachineCondition | undefined {
  const parts = conditions.filter((one) => one !== undefined);
  const [first, ...others] = parts;
  return others.length === 0 ? first : ['&', ...parts];
}

/** What holds where at least one of several conditions holds; undefined for always, as where there are none. */
export function anyOf(
  conditions: readonly (MachineCondition | undefined)[],
): MachineCondition | undefined {
  const parts = new Map<string, MachineCondition>();
  for (const condition of conditions) {
    if (condition === undefined) return undefined;
    parts.set(JSON.stringify(condition), condition);
  }
  const [first, ...others] = parts.values();
  return others.length === 0 ? first : ['|', ...parts.values()];
}

function encode(condition: Condition, space: Space): MachineCondition {
  switch (condition.kind) {
    case 'never':
      return ['|'];
    case 'found':
      return ['?'];
    case 'not':
      return ['!', encode(condition.of, space)];
    case 'all':
      return ['&', ...condition.of.map((part) => encode(part, space))];
    case 'any':
      return ['|', ...condition.of.map((part) => encode(part, space))];
    case 'bare': {
      const attribute = space.attribute(condition.attribute.text);
      return attribute && isYesNo(attribute) ? ['=', attribute.id, 'yes'] : ['?'];
    }
    case 'test': {
      const attribute = space.attribute(condition.attribute.text);
      const values = condition.values.map(({ text }) => text);
      if (attribute === undefined || values.some((value) => !attribute.values.includes(value)))
        return ['?'];
      const test = ['=', attribute.id, ...values] as const;
      return condition.negated ? ['!', test] : test;
    }
  }
}

function isDecided(condition: MachineCondition): boolean {
  switch (condition[0]) {
    case '=':
      return true;
    case '?':
      return false;
    case '!':
      return isDecided(condition[1]);
    default: {
      const [, ...parts] = condition;
      return parts.length === 0 || parts.some(isDecided);
    }
  }
}
