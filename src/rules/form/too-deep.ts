import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'too-deep',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, depth } of examined.facts('too-deep')) {
      yield {
        place,
        message: `This is nested ${depth} deep, which is more than can be read or printed`,
        data: { depth },
        help: 'Take the inner steps out into a procedure of their own and perform it here.',
      };
    }
  },
};
