import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'file-unreadable',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('file-unreadable')) {
      yield {
        place: fact.place,
        message: `This file cannot be read: ${fact.reason}`,
        data: { reason: fact.reason },
        help:
          fact.advice ??
          'See that it can be opened as plain text in UTF-8, or take it out of the manual.',
      };
    }
  },
};
