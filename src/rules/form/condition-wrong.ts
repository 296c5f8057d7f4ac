import { type ConditionProblem, describeConditionProblem } from '../../applicability/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { jsonOf } from '../telling/json.ts';
import { twoParts } from '../wording/two-parts.ts';

export const rule: Rule = {
  id: 'condition-wrong',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    const { isWhole } = examined.linked.manual;
    for (const { place, written, problem } of examined.facts('condition-wrong')) {
      // What a faulty `variants` has lost is told there, once.
      if (!isWhole && !isOfWriting(problem)) continue;
      yield {
        place,
        ...twoParts(describeConditionProblem(problem)),
        data: { written, problem: jsonOf(problem) },
      };
    }
  },
};

const isOfWriting = ({ code }: ConditionProblem): boolean =>
  ['empty', 'unexpected', 'incomplete', 'unclosed', 'too-deep'].includes(code);
