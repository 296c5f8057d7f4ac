import type { Place } from '../../../schemas/finding.ts';
import { allActions } from '../../link/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { type Ending, endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { related } from '../telling/related.ts';
import { directive } from '../wording/directive.ts';
import { code } from '../wording/lists.ts';
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
      const early = torquedTooEarly(examined, ending);
      const draft = endingDraft(examined, ending, {
        message: `${someAre(thing, count)} put in but ${early === undefined ? 'never torqued' : 'not torqued after that'}${written === undefined ? '' : ` (${written})`}`,
        write:
          early === undefined
            ? `Add ${directive('torque', thing, { count })}`
            : `Move ${code(':torque')} behind ${code(':install')}`,
      });
      yield early === undefined
        ? draft
        : {
            ...draft,
            related: [...(draft.related ?? []), related(early, 'torqued here, too early')],
          };
    }
  },
};

/** The torquing before the piece goes in and after it was last taken out or loosened. */
function torquedTooEarly(examined: Examined, { fact }: Ending): Place | undefined {
  const one = examined.linked.procedures.get(fact.procedure);
  if (one === undefined || fact.inside !== undefined) return undefined;
  const before = [...allActions(one.procedure)].filter(
    ({ item, place }) =>
      item.id === fact.item &&
      place.file === fact.place.file &&
      place.start.offset < fact.place.start.offset,
  );
  const last = before.findLast(({ verb }) => verb !== 'check' && verb !== 'measure');
  return last?.verb === 'torque' ? last.place : undefined;
}
