import type { Draft, Rule } from '../rule.ts';
import { allOf, code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'class-unknown',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, written, item, problem } of examined.facts('class-unknown')) {
      const { member, known, belongs } = problem;
      yield {
        place,
        item,
        message:
          member === 'class'
            ? `“${written}” is no property class of ISO 898 or ISO 3506`
            : `“${written}” is no grade of SAE J429`,
        data: { written, member, known: [...known], ...(belongs && { belongs }) },
        help:
          belongs === undefined
            ? `Correct it. Known are ${allOf(known)}.`
            : `It is a ${belongs === 'class' ? 'property class' : 'grade of SAE J429'}: write ${code(`${belongs}: ${written}`)}.`,
      };
    }
  },
};
