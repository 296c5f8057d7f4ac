import { canonical, printAsWritten, type Quantity } from '../../quantity/index.ts';
import { liftsIn } from '../reading/lifts.ts';
import type { Draft, Rule } from '../rule.ts';
import { declared } from '../telling/trace.ts';
import { code, sentence } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'too-heavy',
  family: 'safety',
  level: 'warning',
  *check({ subjects, linked, expanded }): Generator<Draft> {
    const { liftLimit, placeOf } = linked.manual;
    const limit = liftLimit && heaviest(liftLimit);
    if (liftLimit === undefined || limit === undefined) return;
    for (const { id: procedure, one } of subjects) {
      for (const { action, part, people, aided } of liftsIn(one, expanded)) {
        const mass = part.mass && heaviest(part.mass);
        if (part.mass === undefined || mass === undefined || aided === 'all') continue;
        if (mass <= limit * people) continue;
        const each = written(liftLimit);
        const who = people === 1 ? 'one person lifts' : `${people} people lift`;
        const where = aided === 'some' ? 'here where no lifting aid is on' : 'here';
        const needed = Math.ceil(mass / limit);
        yield {
          place: action.place,
          procedure,
          item: part.id,
          message: sentence(
            `${the(thing(part.id, part), 1)} weighs ${written(part.mass)} and ${who} it ${where}, but the manual allows ${each} for each person`,
          ),
          data: { mass, limit, people },
          related: [
            declared(part.placeOf('mass'), 'the mass'),
            declared(placeOf('lift-limit'), 'the limit'),
          ],
          help: `Name a lifting aid of the catalogue (one with ${code('lifts: true')}) with ${code('with=')}${needed > 4 ? '' : `, or say ${code(`::step{people=${needed}}`)}`}. The rules of the workplace and local law decide what one person may lift.`,
        };
      }
    }
  },
};

/** The most that a mass may be, in kg. */
function heaviest(mass: Quantity): number | undefined {
  const { high, low } = canonical(mass);
  return (high ?? low)?.value;
}

const written = (mass: Quantity): string => printAsWritten(mass).replaceAll('\u00a0', ' ');
