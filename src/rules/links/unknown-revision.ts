import type { Draft, Rule } from '../rule.ts';
import { pickFrom, unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-revision',
  family: 'links',
  level: 'warning',
  check: (examined): Iterable<Draft> =>
    unknownReferences(
      examined,
      ['revision'],
      ({ id }) => `This procedure has no revision ${id}`,
      ({ known }) =>
        pickFrom(known, `Give the procedure a ${code('revision')} in its front matter.`),
    ),
};
