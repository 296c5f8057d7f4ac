import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'callout-twice',
  family: 'links',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, item, first } of examined.facts('callout-twice')) {
      yield {
        place,
        procedure,
        item,
        message: `${code(item)} has two numbers in one figure`,
        related: [related(first, 'its first number')],
        help: `One call-out may point at several places: ${code('at="20,35 60,35"')}.`,
      };
    }
  },
};
