import { describeConditionProblem } from '../../applicability/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { jsonOf } from '../telling/json.ts';
import { twoParts } from '../wording/two-parts.ts';

export const rule: Rule = {
  id: 'condition-wrong',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, written, problem } of examined.facts('condition-wrong')) {
      yield {
        place,
        ...twoParts(describeConditionProblem(problem)),
        data: { written, problem: jsonOf(problem) },
      };
    }
  },
};
