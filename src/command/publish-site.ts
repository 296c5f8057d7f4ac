import { join } from 'node:path';
import type { Book } from '../render/index.ts';
import { copyFigures, type FigureFile } from './copy-figures.ts';
import { writeOfflineScript } from './offline-copy.ts';
import { whileFilling } from './progress.ts';
import { buildSite } from './publish-build.ts';
import { siteFolder } from './publish-folder.ts';
import { writeWholeFolder } from './whole-folder.ts';
import { writeSitemap } from './write-sitemap.ts';

/**
 * Writes the site of a Book to `outDir`, whole or not at all: a build that fails leaves the last good site as
 * it was. Throws CannotRun where `outDir` holds something else than a published site, or cannot be written.
 */
export async function publishSite(
  book: Book,
  figures: readonly FigureFile[],
  outDir: string,
): Promise<void> {
  await writeWholeFolder(outDir, siteFolder, async (site, work) => {
    const sheets = { doing: 'Making pages', total: book.sheets.length };
    await whileFilling(join(site, 'procedures'), sheets, () => buildSite(book, site, work));
    await copyFigures(figures, site, 'the site');
    await writeSitemap(book, site);
    await writeOfflineScript(site);
  });
}
