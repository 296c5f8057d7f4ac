import type { Rule } from '../rule.ts';
import { pickFrom, unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-section',
  family: 'links',
  level: 'error',
  check: (examined) =>
    unknownReferences(
      examined,
      ['section'],
      ({ id, owner }) => `The procedure ${code(owner)} has no section ${code(id)}`,
      ({ known }) => pickFrom(known, 'Give that procedure headings, or take the attribute out.'),
    ),
};
