import type { Edit } from '../../schemas/finding.ts';
import { allActions } from '../link/index.ts';
import { applyEdits } from '../report/index.ts';
import { parseProcedure, type SyntaxFact } from '../syntax/index.ts';

/**
 * Those of the directives to be written around words that the file takes: each is read as one action more, and nothing
 * of the language is wrong that was not before. `additions` to the front matter are made first.
 */
export function soundEdits(
  file: string,
  text: string,
  additions: readonly Edit[],
  edits: readonly Edit[],
): readonly Edit[] {
  const before = readingOf(file, text);
  const isSound = (some: readonly Edit[]): boolean => {
    const after = readingOf(file, applyEdits(text, [...additions, ...some]));
    const isCounted = after.actions === before.actions + some.length;
    return (
      isCounted && [...after.facts].every(([kind, count]) => count <= (before.facts.get(kind) ?? 0))
    );
  };
  if (isSound(edits)) return edits;
  const kept: Edit[] = [];
  for (const edit of edits) {
    kept.push(edit);
    if (!isSound(kept)) kept.pop();
  }
  return kept;
}

interface Reading {
  readonly actions: number;
  readonly facts: ReadonlyMap<SyntaxFact['kind'] | string, number>;
}

function readingOf(path: string, text: string): Reading {
  const { value, facts } = parseProcedure({ path, text });
  const byKind = new Map<string, number>();
  for (const { kind } of facts) byKind.set(kind, (byKind.get(kind) ?? 0) + 1);
  return { actions: value === undefined ? -1 : [...allActions(value)].length, facts: byKind };
}
