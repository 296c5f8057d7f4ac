import { join, resolve } from 'node:path';
import { summaryAsText } from '../report/index.ts';
import { checkedBook } from './checked-book.ts';
import type { ExitCode } from './exit-code.ts';
import { outputFolder } from './output-folder.ts';
import { siteFolder } from './publish-folder.ts';
import { publishSite } from './publish-site.ts';
import { say } from './terminal.ts';

export interface PublishOptions {
  readonly to: string;
  readonly draft: boolean;
}

/** Checks, then writes the site. Errors stop it, and leave the last good site as it was; a draft is marked as one. */
export async function publishCommand(
  folder: string,
  { to, draft }: PublishOptions,
): Promise<ExitCode> {
  const out = resolve(to);
  await outputFolder(out, siteFolder, folder);
  const ready = await checkedBook(folder, { draft, undone: 'Nothing was published' });
  if (ready === undefined) return 1;
  const { book, figures, hasFindings, checked } = ready;
  await publishSite(book, figures, out);
  if (!hasFindings) say(summaryAsText(checked.report));
  const count = book.sheets.length;
  say(
    `${count} ${count === 1 ? 'sheet' : 'sheets'}${draft ? ', marked DRAFT,' : ''} published: open ${join(out, 'index.html')}`,
  );
  return hasFindings ? 1 : 0;
}
