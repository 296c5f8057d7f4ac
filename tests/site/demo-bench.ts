import { join } from 'node:path';
import { type Checked, checkFolder } from '../../src/command/check-folder.ts';
import { packageFile } from '../../src/command/package-root.ts';
import { publishSite } from '../../src/command/publish-site.ts';
import { type Book, makeBook } from '../../src/render/index.ts';
import { makeBench } from './published.ts';

/** The demo manual, checked, and its site in a temporary folder. */
export interface DemoBench {
  readonly site: string;
  readonly book: Book;
  readonly checked: Checked;
  clear(): Promise<void>;
}

export async function makeDemoBench(): Promise<DemoBench> {
  const bench = await makeBench();
  const checked = await checkFolder(packageFile('content'));
  const { linked, report, files, folder } = checked;
  const book = makeBook(linked, report, { draft: false });
  const figures = book.figures
    .filter(({ from }) => files.others.includes(from))
    .map(({ from, to }) => ({ path: to, absolute: join(folder, from) }));
  const site = join(bench.folder, 'demo');
  await publishSite(book, figures, site);
  return { site, book, checked, clear: bench.clear };
}
