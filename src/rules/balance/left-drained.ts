import type { Draft, Rule } from '../rule.ts';
import { type Ending, endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { countIn } from '../wording/spread.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-drained',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(examined, ['circuit'], ['drained', 'part-drained'])) {
      const { fact, thing, count } = ending;
      const how = countIn(fact.state, ['drained']) > 0 ? 'drained' : 'part drained';
      yield endingDraft(examined, ending, {
        message: `${someAre(thing, count)} still ${how} at the end`,
        write: write(ending),
      });
    }
  },
};

function write({ thing }: Ending): string {
  const bleed = thing.item?.kind === 'circuit' && thing.item.bleed !== undefined;
  return `Add ${directive('fill', thing)}${bleed ? ` and ${directive('bleed', thing)}` : ''}`;
}
