import type { Draft, Rule } from '../rule.ts';
import { endingDraft } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { spreadWords } from '../wording/spread.ts';
import { theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'control-away',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('not-home')) {
      if (fact.promised || fact.itemKind !== 'control') continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      const home = fact.expected[0]?.[0] ?? '';
      yield endingDraft(
        examined,
        { fact, thing, count: 1 },
        {
          message: `${theyAre(thing)} still ${spreadWords(fact.state)} at the end; “${home}” is expected`,
          write: `Add ${directive('set', thing, { to: home })}`,
        },
      );
    }
  },
};
