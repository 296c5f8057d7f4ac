import { describeSpaceProblem } from '../../applicability/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { jsonOf } from '../telling/json.ts';
import { twoParts } from '../wording/two-parts.ts';

export const rule: Rule = {
  id: 'variants-wrong',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, problem } of examined.facts('variants-wrong')) {
      yield {
        place,
        ...twoParts(describeSpaceProblem(problem)),
        data: { problem: jsonOf(problem) },
      };
    }
  },
};
