import { compareText } from '../source/index.ts';

/** What was checked and can be found in order: a procedure, or another text of the manual. */
export interface Subject {
  /** Id of the procedure; path of another text. */
  readonly name: string;
  readonly kind: 'procedure' | 'file';
  readonly file: string;
}

/** The procedures of a manual by id, then its other texts by path. */
export function subjectsOf(
  found: readonly { readonly id: string; readonly file: string }[],
  texts: readonly { readonly path: string }[],
): Subject[] {
  const procedures = found.map(({ id, file }): Subject => ({ name: id, kind: 'procedure', file }));
  const taken = new Set(procedures.map(({ file }) => file));
  const others = texts
    .filter(({ path }) => !taken.has(path))
    .map(({ path }): Subject => ({ name: path, kind: 'file', file: path }));
  const byName = (a: Subject, b: Subject): number => compareText(a.name, b.name);
  return [...procedures.sort(byName), ...others.sort(byName)];
}

/** Name of the subject to which a finding belongs. */
export const subjectOf = (finding: {
  readonly procedure?: string;
  readonly file?: string;
}): string => finding.procedure ?? finding.file ?? '';
