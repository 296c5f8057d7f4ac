import type { Draft, Rule } from '../rule.ts';
import { endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'never-torqued',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(
      examined,
      ['fastener', 'connection'],
      ['snug', 'joined'],
      ({ hasTorque }) => hasTorque,
    )) {
      const { thing, count } = ending;
      const { item } = thing;
      const torque = item !== undefined && 'torque' in item ? item.torque : undefined;
      const written = torque?.written.join(', ');
      yield endingDraft(examined, ending, {
        message: `${someAre(thing, count)} put in but never torqued${written === undefined ? '' : ` (${written})`}`,
        write: `Add ${directive('torque', thing, { count })}`,
      });
    }
  },
};
