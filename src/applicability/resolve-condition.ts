import { nearest } from '../source/index.ts';
import { type Attribute, isYesNo } from './attribute.ts';
import type { BareTest, Condition, Found, Name, Test } from './condition.ts';
import type { ConditionMeaningProblem } from './condition-problem.ts';
import type { Space } from './space.ts';
import type { VariantSet } from './variant-set.ts';

export interface ResolvedCondition {
  /** every allowed machine, if a name in the condition is unknown */
  readonly value: VariantSet;
  readonly problems: readonly ConditionMeaningProblem[];
}

/** What may be found in the work, by its label, with the machines and ways for which it is so. */
export type FoundSets = ReadonlyMap<string, VariantSet>;

/** The machines for which a condition holds. `found` are the labels that may be used here. */
export function resolveCondition(
  space: Space,
  condition: Condition,
  found: FoundSets = new Map(),
): ResolvedCondition {
  const problems: ConditionMeaningProblem[] = [];
  const value = new Resolver(space, found, problems).set(condition);
  if (problems.length > 0) return { value: space.all, problems };
  const { start, end } = condition;
  if (value === space.none) problems.push({ code: 'never-true', start, end });
  else if (value === space.all) problems.push({ code: 'always-true', start, end });
  return { value, problems };
}

class Resolver {
  readonly #space: Space;
  readonly #labels: FoundSets;
  readonly #problems: ConditionMeaningProblem[];

  constructor(space: Space, labels: FoundSets, problems: ConditionMeaningProblem[]) {
    this.#space = space;
    this.#labels = labels;
    this.#problems = problems;
  }

  set(condition: Condition): VariantSet {
    const space = this.#space;
    switch (condition.kind) {
      case 'never':
        return space.none;
      case 'not':
        return space.not(this.set(condition.of));
      case 'all':
        return condition.of.map((part) => this.set(part)).reduce((a, b) => space.and(a, b));
      case 'any':
        return condition.of.map((part) => this.set(part)).reduce((a, b) => space.or(a, b));
      case 'test':
        return this.#test(condition);
      case 'bare':
        return this.#bare(condition);
      case 'found':
        return this.#found(condition);
    }
  }

  #test({ attribute: name, negated, values }: Test): VariantSet {
    const attribute = this.#attribute(name);
    if (attribute === undefined) return this.#space.all;
    const known: string[] = [];
    for (const value of values) {
      if (attribute.values.includes(value.text)) known.push(value.text);
      else this.#problems.push(unknownValue(attribute, value));
    }
    const set = this.#space.isIn(attribute.id, known);
    return negated ? this.#space.not(set) : set;
  }

  #bare({ attribute: name, start, end }: BareTest): VariantSet {
    const attribute = this.#attribute(name);
    if (attribute === undefined) return this.#space.all;
    if (isYesNo(attribute)) return this.#space.is(attribute.id, 'yes');
    const { id, values } = attribute;
    this.#problems.push({ code: 'value-needed', attribute: id, known: values, start, end });
    return this.#space.all;
  }

  #found({ label, way, start, end }: Found): VariantSet {
    if (way !== undefined) return this.#space.is(way.attribute, way.value);
    const meant = this.#labels.get(label);
    if (meant !== undefined) return meant;
    const known = [...this.#labels.keys()];
    const problem = { code: 'unknown-branch', label, known, start, end } as const;
    this.#problems.push({ ...problem, ...withNear(label, known) });
    return this.#space.all;
  }

  #attribute({ text, start, end }: Name): Attribute | undefined {
    const attribute = this.#space.attribute(text);
    if (attribute !== undefined) return attribute;
    const { attributes } = this.#space;
    const known = attributes.map(({ id }) => id);
    const owners = attributes.filter(({ values }) => values.includes(text)).map(({ id }) => id);
    const problem = { code: 'unknown-attribute', name: text, known, owners, start, end } as const;
    this.#problems.push({ ...problem, ...withNear(text, known) });
    return undefined;
  }
}

function unknownValue(attribute: Attribute, { text, start, end }: Name): ConditionMeaningProblem {
  const { id, values: known } = attribute;
  const problem = { code: 'unknown-value', attribute: id, name: text, known, start, end } as const;
  return { ...problem, ...withNear(text, known) };
}

function withNear(written: string, known: readonly string[]): { readonly near?: string } {
  const near = nearest(written, known);
  return near === undefined ? {} : { near };
}
