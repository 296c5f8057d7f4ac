import type { MachineCondition } from '../applicability/index.ts';
import type { Topic } from './topic.ts';

/** Of each attribute that a condition speaks of, the values for which it holds. */
type Values = ReadonlyMap<string, readonly string[]>;

/**
 * A condition as the `product` attribute, with a group of values for each thing in which machines differ:
 * `feed(hydraulic) winch(yes)` (DITA 1.3, conditional processing values and groups: content goes where all
 * values of any group are excluded). What an attribute cannot say is left out, so that the content stays: the
 * text says for which machines it is.
 */
export function productOf(
  condition: MachineCondition | undefined,
  { valuesOf }: Topic,
): string | undefined {
  if (condition === undefined) return undefined;
  const groups = [...valuesIn(condition, valuesOf)].flatMap(([attribute, values]) =>
    values.length > 0 && [attribute, ...values].every((word) => /^[\w.-]+$/.test(word))
      ? [`${attribute}(${values.join(' ')})`]
      : [],
  );
  return groups.length === 0 ? undefined : groups.join(' ');
}

function valuesIn(condition: MachineCondition, valuesOf: Topic['valuesOf']): Values {
  switch (condition[0]) {
    case '=': {
      const [, attribute, ...values] = condition;
      return new Map([[attribute, values]]);
    }
    case '!': {
      const [, inner] = condition;
      if (inner[0] !== '=') return new Map();
      const [, attribute, ...values] = inner;
      return new Map([[attribute, valuesOf(attribute).filter((value) => !values.includes(value))]]);
    }
    case '&': {
      const [, ...parts] = condition;
      return parts.map((part) => valuesIn(part, valuesOf)).reduce(both, new Map());
    }
    case '|': {
      const [, ...parts] = condition;
      const [first, ...others] = parts.map((part) => valuesIn(part, valuesOf));
      return first === undefined ? new Map() : others.reduce(either, first);
    }
    case '?':
      return new Map();
  }
}

function both(a: Values, b: Values): Values {
  const all = new Map(a);
  for (const [attribute, values] of b) {
    const known = all.get(attribute);
    all.set(attribute, known === undefined ? values : known.filter((one) => values.includes(one)));
  }
  return all;
}

/** What both ways limit is limited to the values of either. */
function either(a: Values, b: Values): Values {
  return new Map(
    [...a].flatMap(([attribute, values]) => {
      const others = b.get(attribute);
      return others === undefined ? [] : [[attribute, [...new Set([...values, ...others])]]];
    }),
  );
}
