import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'text-alternative-missing',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, path } of examined.facts('alternative-missing')) {
      yield {
        place,
        procedure,
        message: `The figure ${code(path)} has no words for those who cannot see it`,
        data: { path },
        help: `Say what it shows: ${code('alt="The two hinge pins, seen from the left"')}.`,
      };
    }
  },
};
