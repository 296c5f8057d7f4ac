import type { Rule } from '../rule.ts';
import { unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-procedure',
  family: 'links',
  level: 'error',
  check: (examined) =>
    unknownReferences(
      examined,
      ['procedure'],
      ({ id }) => `There is no procedure ${code(id)} in this manual`,
      () => 'Correct the id, or write that procedure.',
    ),
};
