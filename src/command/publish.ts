import { join, resolve } from 'node:path';
import { makeBook } from '../render/index.ts';
import { reportAsText, summaryAsText } from '../report/index.ts';
import { CannotRun } from './cannot-run.ts';
import { checkFolder } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import { publishSite } from './publish-site.ts';
import { complain, paintFor, say } from './terminal.ts';

export interface PublishOptions {
  readonly to: string;
  readonly draft: boolean;
}

/** Checks, then writes the site. Errors stop it, and leave the last good site as it was; a draft is marked as one. */
export async function publishCommand(
  folder: string,
  { to, draft }: PublishOptions,
): Promise<ExitCode> {
  const checked = await checkFolder(folder);
  const { report } = checked;
  if (report.manual.procedures === 0) {
    throw new CannotRun(
      `The manual in ${folder} has no procedure that can be read.`,
      'Run `tallybolt inspect` to see why.',
    );
  }
  const findings = report.summary.error + report.summary.warning > 0;
  if (findings) complain(reportAsText(report, checked.textOf, paintFor(process.stderr)));
  if (report.summary.error > 0 && !draft) {
    complain(
      'Nothing was published: the errors above come first. `--draft` publishes with DRAFT on every sheet.',
    );
    return 1;
  }
  const out = resolve(to);
  const book = makeBook(checked.linked, report, { draft });
  // A draft may show a picture that is not there: a finding tells it.
  const figures = book.figures
    .filter(({ from }) => checked.files.others.includes(from))
    .map(({ from, to }) => ({ path: to, absolute: join(checked.folder, from) }));
  await publishSite(book, figures, out);
  if (!findings) say(summaryAsText(report));
  say(
    `${book.sheets.length} sheets${draft ? ', marked DRAFT,' : ''} published: open ${join(out, 'index.html')}`,
  );
  return findings ? 1 : 0;
}
