import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'capacity-zero',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place } of examined.facts('capacity-zero')) {
      yield {
        place,
        message: 'This circuit holds nothing',
        help: 'Give the volume that it takes to fill it from empty.',
      };
    }
  },
};
