import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'base-unfit',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, base } of examined.facts('base-unfit')) {
      yield {
        place,
        message: `This mix does not say how much of it is ${base.replace('-', ' ')}, so its freezing point cannot be looked up`,
        data: { base },
        help: 'Give the share of the concentrate first and that of the water after it, 100 % together: `mix: { concentrate: 50 %, water: 50 % }`.',
      };
    }
  },
};
