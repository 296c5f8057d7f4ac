import type { LinkedManual } from '../../link/index.ts';
import { type OpenBook, openBook } from '../../render/index.ts';
import type { Inspection } from '../../report/index.ts';
import type { ManualFiles } from '../../source/index.ts';

/** What the proof shows: the manual as it was last read, and what of earlier states is still needed. */
export interface Desk {
  /** Rises by one with each change of what is shown. */
  readonly edition: number;
  readonly book: OpenBook;
  readonly linked: LinkedManual;
  readonly files: ManualFiles;
  /** Why the manual as a whole cannot be read now; undefined where it can. */
  readonly blocked: { readonly words: string; readonly advice: string | undefined } | undefined;
  /** Sheets whose file is there and cannot be read as a procedure now, by id, as they last could. */
  readonly held: ReadonlyMap<string, HeldSheet>;
  /** Sheets that have gone since the proof began, by id. */
  readonly gone: ReadonlyMap<string, { readonly file: string; readonly title: string }>;
}

export interface HeldSheet {
  readonly file: string;
  readonly book: OpenBook;
}

/** The desk after a check; `before` is undefined at the start. */
export function deskAfter(
  before: Desk | undefined,
  { linked, report }: Inspection,
  files: ManualFiles,
): Desk {
  const book = openBook(linked, report, { draft: report.summary.error > 0 });
  const held = new Map<string, HeldSheet>();
  const gone = new Map(before?.gone);
  if (before !== undefined) {
    const shown = new Set([...linked.procedures.values()].map(({ procedure }) => procedure.file));
    const there = new Set([...files.texts, ...files.unreadable].map(({ path }) => path));
    const isHeld = (file: string): boolean => there.has(file) && !shown.has(file);
    for (const [id, one] of before.held)
      if (isHeld(one.file) && !linked.procedures.has(id)) held.set(id, one);
    for (const [id, { procedure }] of before.linked.procedures) {
      if (linked.procedures.has(id)) continue;
      const { file, front } = procedure;
      gone.set(id, { file, title: front.title });
      if (isHeld(file)) held.set(id, { file, book: before.book });
    }
  }
  for (const id of linked.procedures.keys()) gone.delete(id);
  return {
    edition: (before?.edition ?? 0) + 1,
    book,
    linked,
    files,
    blocked: undefined,
    held,
    gone,
  };
}

/** The desk where the manual as a whole cannot be read: it shows what it showed, and says why. */
export function deskBlocked(before: Desk, words: string, advice: string | undefined): Desk {
  return { ...before, edition: before.edition + 1, blocked: { words, advice } };
}
