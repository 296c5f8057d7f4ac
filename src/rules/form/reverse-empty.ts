import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'reverse-empty',
  family: 'form',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('reverse-empty')) {
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: `Nothing of ${code(fact.section)} is left to undo here`,
        data: { section: fact.section },
        related: [related(fact.sectionPlace, 'the section to undo')],
        help: 'Take the line out, or name the section that takes something apart.',
      };
    }
  },
};
