import { torqueActions, torqueActionsWrittenOut } from '../reading/torque-actions.ts';
import type { Draft, Rule } from '../rule.ts';
import { declared } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'torque-missing',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      const writtenOut = torqueActionsWrittenOut(examined, one);
      for (const { action, fastener, figures } of [...torqueActions(one), ...writtenOut]) {
        const isSaid = fastener.torque !== undefined || fastener.tightness !== undefined;
        if (
          isSaid ||
          fastener.faulty.has('torque') ||
          action.value !== undefined ||
          figures.length > 0
        )
          continue;
        yield {
          place: action.place,
          procedure,
          item: fastener.id,
          message: `Nothing says how tight ${the(thing(fastener.id, fastener))} must be`,
          data: { verb: action.verb },
          related: [declared(fastener.place, code(fastener.id))],
          help: `Give ${code(fastener.id)} a ${code('torque')} in the catalogue, or a ${code('tightness')} (hand-tight, snug or until-drag) where there is no figure.`,
        };
      }
    }
  },
};
