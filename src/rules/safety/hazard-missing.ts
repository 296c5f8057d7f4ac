import { unguarded } from '../reading/unguarded.ts';
import type { Draft, Rule } from '../rule.ts';
import { declared } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'hazard-missing',
  family: 'safety',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { procedure, hazard, action, late } of unguarded(examined)) {
      if (late !== undefined) continue;
      yield {
        place: action.place,
        procedure: procedure.procedure.id,
        item: action.item.id,
        message: `This raises the hazard “${hazard.hazard}”, and no panel before it says so`,
        data: { hazard: hazard.id, verb: action.verb, item: action.item.id },
        related: [declared(hazard.place, 'the hazard')],
        help: `Add ${code(`::hazard{of=${hazard.id}}`)} as the first line of this step, or before it.`,
      };
    }
  },
};
