import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'front-matter-missing',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('front-matter-missing')) {
      yield {
        place: fact.place,
        message: 'This file has no front matter, so it is no procedure yet',
        help: 'Start the file with a line ---, then `procedure:` with an id and `title:` with its title, then a line --- again.',
      };
    }
  },
};
