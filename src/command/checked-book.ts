import { join } from 'node:path';
import { type Book, makeBook } from '../render/index.ts';
import { reportAsText } from '../report/index.ts';
import { CannotRun } from './cannot-run.ts';
import { type Checked, checkFolder } from './check-folder.ts';
import type { FigureFile } from './copy-figures.ts';
import { complain, paintFor, widthOf } from './terminal.ts';

/** A manual that has been checked and may be shown. */
export interface CheckedBook {
  readonly checked: Checked;
  readonly book: Book;
  readonly figures: readonly FigureFile[];
  /** True where the check told an error or a warning. */
  readonly hasFindings: boolean;
}

/**
 * Checks a manual and makes its Book. What the check finds goes to the terminal; errors stop it, so that the
 * answer is undefined, unless a draft is wanted. `undone` says what then was not done: "Nothing was published".
 */
export async function checkedBook(
  folder: string,
  { draft, undone }: { readonly draft: boolean; readonly undone: string },
): Promise<CheckedBook | undefined> {
  const checked = await checkFolder(folder);
  const { report } = checked;
  if (report.manual.procedures === 0) {
    throw new CannotRun(
      `The manual in ${folder} has no procedure that can be read.`,
      'Run `tallybolt inspect` to see why.',
    );
  }
  const hasFindings = report.summary.error + report.summary.warning > 0;
  if (hasFindings)
    complain(
      reportAsText(report, checked.textOf, paintFor(process.stderr), widthOf(process.stderr)),
    );
  if (report.summary.error > 0 && !draft) {
    complain(
      `${undone}: the errors above come first. \`--draft\` goes on, with DRAFT on every sheet.`,
    );
    return undefined;
  }
  const book = makeBook(checked.linked, report, { draft });
  // A draft may show a picture that is not there or cannot be shown: a finding tells it, and the sheet has its words.
  const refused = new Set(
    checked.files.pictures?.flatMap(({ path, state }) => (state === 'fit' ? [] : [path])),
  );
  const figures = book.figures
    .filter(({ from }) => checked.files.others.includes(from) && !refused.has(from))
    .map(({ from, to }) => ({ path: to, absolute: join(checked.folder, from) }));
  return { checked, book, figures, hasFindings };
}
