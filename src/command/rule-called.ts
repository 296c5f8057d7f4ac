import { type Rule, rules } from '../rules/index.ts';
import { nearest } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';

/** The rule with an id that was typed. Throws CannotRun, with the nearest of `others` and the ids, where there is none. */
export function ruleCalled(id: string, others: readonly string[] = []): Rule {
  const rule = rules.find((one) => one.id === id);
  if (rule !== undefined) return rule;
  const near = nearest(id, [...rules.map((one) => one.id), ...others]);
  throw new CannotRun(
    `There is no rule ${id}.`,
    near === undefined ? 'Run `tallybolt explain` for the list.' : `Did you mean ${near}?`,
  );
}
