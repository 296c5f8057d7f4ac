import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'section-twice',
  family: 'form',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, first, id } of examined.facts('section-twice')) {
      yield {
        place,
        message: `A section ${code(id)} stands in this procedure already`,
        data: { id },
        related: [related(first, 'the first one is here')],
        help: 'Give one of the two headings another name, so that each can be linked to and performed.',
      };
    }
  },
};
