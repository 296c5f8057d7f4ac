import type { Draft, Rule } from '../rule.ts';
import { endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-isolated',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(examined, ['energy'], ['isolated'])) {
      const { thing, count } = ending;
      yield endingDraft(examined, ending, {
        message: `${someAre(thing, count)} still isolated at the end`,
        write: `Add ${directive('restore', thing)}`,
      });
    }
  },
};
