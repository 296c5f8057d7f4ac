import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';

export const rule: Rule = {
  id: 'too-large',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('too-large')) {
      yield {
        place: fact.place,
        message: `There are ${fact.found} ${fact.what}, more than the ${fact.limit} that are read`,
        data: factsOf(fact, ['kind']),
        help: 'Split the procedure into several and perform them from one.',
      };
    }
  },
};
