import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'mix-over',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, percent } of examined.facts('mix-over')) {
      yield {
        place,
        message: `The shares of this mix are ${Math.round(percent * 100) / 100} % together, more than the whole`,
        data: { percent },
        help: 'Correct the shares, so that they are 100 % or less.',
      };
    }
  },
};
