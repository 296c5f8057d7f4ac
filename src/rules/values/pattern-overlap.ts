import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'pattern-overlap',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, first, second } of examined.facts('pattern-overlap')) {
      yield {
        place,
        message: `Positions ${first} and ${second} of this pattern are the same place`,
        data: { first, second },
        help: 'Correct one of them. Each is [x, y], with x to the right and y up.',
      };
    }
  },
};
