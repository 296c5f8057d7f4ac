import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'link-outside',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, url } of examined.facts('link-outside')) {
      yield {
        place,
        procedure,
        message: `${code(url)} leads out of the manual's folder`,
        data: { url },
        help: 'Copy what is needed into the manual, or link to a web address that starts with https.',
      };
    }
  },
};
