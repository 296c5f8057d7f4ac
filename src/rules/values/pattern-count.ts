import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'pattern-count',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, positions, count } of examined.facts('pattern-count')) {
      yield {
        place,
        message: `This pattern has ${positions} positions for ${count} fasteners`,
        data: { positions, count },
        help: 'Correct the pattern or the count, so that there is one position for each.',
      };
    }
  },
};
