import { unguarded } from '../reading/unguarded.ts';
import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { declared } from '../telling/trace.ts';

export const rule: Rule = {
  id: 'hazard-late',
  family: 'safety',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { procedure, hazard, action, late } of unguarded(examined)) {
      if (late === undefined) continue;
      yield {
        place: late.place,
        procedure: procedure.procedure.id,
        item: action.item.id,
        message: `This panel on “${hazard.hazard}” comes after the action that raises the hazard`,
        data: { hazard: hazard.id, verb: action.verb, item: action.item.id },
        related: [
          related(action.place, 'the hazard is raised here'),
          declared(hazard.place, 'the hazard'),
        ],
        help: 'Move the panel in front of the words of that step, or before the step: a sheet prints the two in the order in which they stand.',
      };
    }
  },
};
