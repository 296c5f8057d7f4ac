import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'broken-link',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('link-broken')) {
      const isPart = fact.target.startsWith('#');
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: isPart
          ? `The link ${code(fact.url)} leads to no section or step: there is no ${code(fact.target.slice(1))}`
          : `The link ${code(fact.url)} leads to no procedure: there is no ${code(fact.target)}`,
        data: factsOf(fact, ['kind', 'procedure']),
        help:
          fact.near === undefined
            ? 'Link to a procedure of this manual by its file, such as [make safe](make-safe.md).'
            : `Perhaps ${code(fact.near)} is meant.`,
      };
    }
  },
};
