import type { Examined } from '../rule.ts';

/**
 * Whether a procedure may be there that nobody has read: its file is rejected or broken, or another performs one that
 * is not there. What no procedure seems to use may then be used after all.
 */
export function losesProcedures(examined: Examined): boolean {
  const read = new Set(
    [...examined.linked.procedures.values()].map(({ procedure }) => procedure.file),
  );
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
