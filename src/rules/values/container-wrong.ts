import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'container-wrong',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, written, problem, known, near } of examined.facts('container-wrong')) {
      if (problem === 'no-size') {
        yield {
          place,
          message: `“${written}” is not the size of a container; expected one volume or mass above zero`,
          data: { written },
          help: 'Write each size that it is sold in, such as [1 L, 5 L, 20 L].',
        };
      } else {
        const names = known.map((name) => `“${name}”`).join(' and ');
        yield {
          place,
          message: `“${written}” is no part of this mix; expected ${names || 'a list of sizes, since there is no mix'}`,
          data: { written, known: [...known] },
          help:
            near === undefined
              ? 'Name a fluid as the mix names it, or give one list of sizes for a fluid that is sold ready to use.'
              : `Perhaps “${near}” is meant.`,
        };
      }
    }
  },
};
