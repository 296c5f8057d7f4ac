import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'tool-length-wrong',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, written, member, item } of examined.facts('tool-length-wrong')) {
      yield {
        place,
        item,
        message: `The ${member} of ${item} is “${written}”; one length above zero is expected`,
        data: { written, member },
        help:
          member === 'length'
            ? 'Give the distance from the drive of the wrench to the middle of its grip, such as 350 mm.'
            : 'Give the distance from the drive of the wrench to the middle of the bolt, such as 50 mm.',
      };
    }
  },
};
