import type { Draft, Rule } from '../rule.ts';
import { allOf, oneOf } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'thread-unknown',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, written, item, problem } of examined.facts('thread-unknown')) {
      const { code, size, near, system } = problem;
      const sizes = system === 'metric' ? size : `${size} in`;
      yield {
        place,
        item,
        message:
          code === 'no-such-size'
            ? `“${written}” is no standard thread: there is no size ${sizes}`
            : `“${written}” is no standard thread: the size ${sizes} has ${allOf(near)}`,
        data: { written, system, size, near: [...near] },
        help:
          code === 'no-such-size' && near.length > 0
            ? `Correct the thread; next to it are ${oneOf(near)}. A special thread is written with that word: special ${written}.`
            : `Correct the thread. A special one is written with that word: special ${written}.`,
      };
    }
  },
};
