import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'figure-missing',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('figure-missing')) {
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: `There is no figure ${code(fact.path)}`,
        data: factsOf(fact, ['kind', 'procedure']),
        help:
          fact.near === undefined
            ? 'Put the picture there, or correct the path; it counts from the folder of this file.'
            : `Perhaps ${code(fact.near)} is meant.`,
      };
    }
    for (const { place, procedure, path } of examined.facts('figure-unfit')) {
      yield {
        place,
        procedure,
        message: `${code(path)} is no picture that can be printed`,
        data: { path },
        help: 'Use a picture of the type svg, png, jpg or webp.',
      };
    }
  },
};
