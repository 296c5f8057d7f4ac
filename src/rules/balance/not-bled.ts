import type { Draft, Rule } from '../rule.ts';
import { endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'not-bled',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(examined, ['circuit'], ['filled'])) {
      const { thing, count } = ending;
      yield endingDraft(examined, ending, {
        message: `${someAre(thing, count)} filled again but not bled`,
        write: `Add ${directive('bleed', thing)} after the filling`,
      });
    }
  },
};
