import type { Draft, Rule } from '../rule.ts';

export const rule: Rule = {
  id: 'empty-manual',
  family: 'form',
  level: 'error',
  *check({ hasSettings, linked }): Generator<Draft> {
    if (!hasSettings) return;
    yield {
      place: linked.manual.placeOf('title'),
      message: 'This manual has no procedures',
      help: 'Write the first one as a Markdown file in the folder `procedures/`.',
      unless: [present],
    };
  },
  *settles(examined): Generator<string> {
    if (examined.subjects.length > 0 || examined.facts(...lost).length > 0) yield present;
  },
};

const present = 'a procedure is there';

/** With these, a file of the manual is there but could not be taken for a procedure. */
const lost = [
  'file-unreadable',
  'front-matter-missing',
  'too-deep',
  'too-large',
  'yaml-broken',
  'yaml-shape',
] as const;
