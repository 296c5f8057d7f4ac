import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'yaml-broken',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('yaml-broken')) {
      yield {
        place: fact.place,
        message: `This YAML cannot be read: ${fact.reason}`,
        data: { reason: fact.reason },
        help: 'Correct the marked place. Until then nothing else in this file can be relied on.',
      };
    }
  },
};
