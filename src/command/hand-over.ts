import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { ditaFiles } from '../dita/index.ts';
import { summaryAsText } from '../report/index.ts';
import { checkedBook } from './checked-book.ts';
import { copyFigures } from './copy-figures.ts';
import type { ExitCode } from './exit-code.ts';
import { outputFolder } from './output-folder.ts';
import { ditaFolder } from './publish-folder.ts';
import { say } from './terminal.ts';
import { writeWholeFolder } from './whole-folder.ts';

export interface HandOverOptions {
  readonly into: string;
  readonly draft: boolean;
}

/** Checks, then writes the whole manual as OASIS DITA 1.3. Errors stop it, and leave the last good export as it was. */
export async function handOverCommand(
  folder: string,
  { into, draft }: HandOverOptions,
): Promise<ExitCode> {
  const out = resolve(into);
  await outputFolder(out, ditaFolder, folder);
  const ready = await checkedBook(folder, { draft, undone: 'Nothing was handed over' });
  if (ready === undefined) return 1;
  const { book, figures, hasFindings, checked } = ready;
  const files = ditaFiles(checked.linked, book);
  await writeWholeFolder(out, ditaFolder, async (fresh) => {
    for (const { path, content } of files) {
      await mkdir(dirname(join(fresh, path)), { recursive: true });
      await writeFile(join(fresh, path), content);
    }
    await copyFigures(figures, fresh, 'the export');
  });
  if (!hasFindings) say(summaryAsText(checked.report));
  say(
    `${book.sheets.length} tasks${draft ? ', marked as a draft,' : ''} handed over: open ${join(out, 'manual.ditamap')}`,
  );
  return hasFindings ? 1 : 0;
}
