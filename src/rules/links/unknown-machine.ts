import type { Rule } from '../rule.ts';
import { pickFrom, unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-machine',
  family: 'links',
  level: 'error',
  check: (examined) =>
    unknownReferences(
      examined,
      ['machine'],
      ({ id }) => `There is no machine ${code(id)} in this manual`,
      ({ id, known }) => pickFrom(known, `Add the file machines/${id}.yaml.`),
    ),
};
