import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'reverse-of-later',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('reverse-of-later')) {
      const isInside = fact.sectionPlace.start.offset < fact.place.start.offset;
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: isInside
          ? `${code('::reverse')} stands in ${code(fact.section)} itself, the section that it is to undo`
          : `${code('::reverse')} can only undo what stands before it, and ${code(fact.section)} does not`,
        data: { section: fact.section },
        related: [related(fact.sectionPlace, 'the section to undo')],
        help: isInside
          ? `Put a heading before it, such as ${code('## Reassembly')}.`
          : `Move the section ${code(fact.section)} in front of it.`,
      };
    }
  },
};
