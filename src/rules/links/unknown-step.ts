import type { Rule } from '../rule.ts';
import { unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-step',
  family: 'links',
  level: 'error',
  check: (examined) =>
    unknownReferences(
      examined,
      ['step'],
      ({ id }) => `No step of this procedure is called ${code(id)}`,
      ({ id }) => `Correct the id, or write ${code(`::step{#${id}}`)} in the step that is meant.`,
    ),
};
