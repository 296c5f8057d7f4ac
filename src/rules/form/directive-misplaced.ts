import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'directive-misplaced',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('directive-misplaced')) {
      yield {
        place: fact.place,
        message: `${code(fact.name)} is misplaced: ${here(fact.found)}; ${fact.expected} is expected`,
        data: factsOf(fact, ['kind']),
        help: 'Move it, or write it with the right number of colons.',
      };
    }
  },
};

const here = (found: string): string =>
  /^(in|on) /.test(found) ? `it stands ${found}` : `here is ${found}`;
