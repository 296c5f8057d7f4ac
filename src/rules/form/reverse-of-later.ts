import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'reverse-of-later',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('reverse-of-later')) {
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: `${code('::reverse')} can only undo what stands before it, and ${code(fact.section)} does not`,
        data: { section: fact.section },
        related: [related(fact.sectionPlace, 'the section to undo')],
        help: `Move the section ${code(fact.section)} in front of it.`,
      };
    }
  },
};
