import type { Attribute } from './attribute.ts';
import type { Condition } from './condition.ts';
import { Diagrams } from './diagrams.ts';
import { resolveCondition } from './resolve-condition.ts';
import { Space } from './space.ts';
import type { SpaceProblem } from './space-problem.ts';

/**
 * The space of a manual's machines. Each constraint removes the machines it holds for. One that cannot be
 * understood, or that would leave no machine, is reported and not applied.
 */
export function createSpace(
  attributes: readonly Attribute[],
  constraints: readonly Condition[],
): { readonly space: Space; readonly problems: readonly SpaceProblem[] } {
  const problems: SpaceProblem[] = [];
  const declared = withoutDuplicates(attributes, problems);
  const diagrams = new Diagrams();
  for (const attribute of declared) diagrams.addLevel(attribute.values.length);
  const unconstrained = new Space(declared, diagrams, diagrams.full);
  let all = diagrams.full;
  for (const [constraint, condition] of constraints.entries()) {
    const resolved = resolveCondition(unconstrained, condition);
    const faults = resolved.problems.filter((problem) => problem.code !== 'always-true');
    for (const problem of faults) problems.push({ code: 'constraint', constraint, problem });
    if (faults.length > 0) continue;
    const left = diagrams.minus(all, resolved.value);
    if (left === diagrams.none) problems.push({ code: 'no-machine-left', constraint });
    else all = left;
  }
  return { space: new Space(declared, diagrams, all), problems };
}

function withoutDuplicates(
  attributes: readonly Attribute[],
  problems: SpaceProblem[],
): readonly Attribute[] {
  const declared = new Map<string, Attribute>();
  for (const { id, values } of attributes) {
    if (declared.has(id)) {
      problems.push({ code: 'duplicate-attribute', attribute: id });
      continue;
    }
    const [first, ...rest] = values;
    const distinct = new Set(rest);
    distinct.delete(first);
    declared.set(id, { id, values: [first, ...distinct] });
    for (const value of repeated(values)) {
      problems.push({ code: 'duplicate-value', attribute: id, value });
    }
  }
  return [...declared.values()];
}

function repeated(values: readonly string[]): ReadonlySet<string> {
  return new Set(values.filter((value, index) => values.indexOf(value) !== index));
}
