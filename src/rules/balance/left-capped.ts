import type { Draft, Rule } from '../rule.ts';
import { endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-capped',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(examined, ['connection'], ['capped'])) {
      const { thing, count } = ending;
      yield endingDraft(examined, ending, {
        message: `${someAre(thing, count)} still capped at the end`,
        write: `Add ${directive('uncap', thing, { count })} and ${directive('connect', thing, { count })}`,
      });
    }
  },
};
