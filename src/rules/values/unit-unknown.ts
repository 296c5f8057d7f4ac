import { describeProblem, isOnlySpelling } from '../../quantity/index.ts';
import { quantityProblems } from '../reading/quantity-problems.ts';
import type { Draft, Rule } from '../rule.ts';
import { jsonOf } from '../telling/json.ts';
import { twoParts } from '../wording/two-parts.ts';

export const rule: Rule = {
  id: 'unit-unknown',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, written, problem, procedure } of quantityProblems(examined)) {
      if (isOnlySpelling(problem)) continue;
      yield {
        place,
        procedure,
        ...twoParts(describeProblem(problem)),
        data: { written, problem: jsonOf(problem) },
      };
    }
    for (const { place, problem } of examined.facts('units-wrong')) {
      if (problem.code !== 'policy-unit-unknown') continue;
      yield { place, ...twoParts(describeProblem(problem)), data: { problem: jsonOf(problem) } };
    }
  },
};
