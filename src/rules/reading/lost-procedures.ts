import type { Examined } from '../rule.ts';

/** What a rule settles that says what no procedure does, where one may be there that nobody has read. */
export const lost = 'a procedure is lost';

/**
 * Yields `lost` where a procedure may be there that nobody has read: its file is rejected or broken, or another
 * performs one that is not there. What no procedure seems to use may then be used after all.
 */
export function* lostProcedures(examined: Examined): Generator<string> {
  if (losesProcedures(examined)) yield lost;
}

function losesProcedures(examined: Examined): boolean {
  const read = new Set(examined.subjects.map(({ one }) => one.procedure.file));
  const rejected = examined.facts(
    'file-unreadable',
    'front-matter-missing',
    'too-deep',
    'too-large',
    'yaml-shape',
    'duplicate-procedure',
  );
  return (
    rejected.some(({ place: { file } }) => isProcedure(file) && !read.has(file)) ||
    examined.facts('yaml-broken').some(({ place }) => isProcedure(place.file)) ||
    examined.facts('unknown-reference').some(({ what }) => what === 'procedure')
  );
}

const isProcedure = (path: string): boolean =>
  path.startsWith('procedures/') && path.endsWith('.md');
