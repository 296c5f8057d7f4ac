import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { Book } from '../render/index.ts';
import { CannotRun } from './cannot-run.ts';
import { buildSite } from './publish-build.ts';
import { refuseForeignFolder, siteMarker, swapFolders } from './publish-folder.ts';
import { reasonOf } from './reason-of.ts';

/** A file of the manual that the site takes along: `path` from the manual's folder, `absolute` on this disk. */
export interface FigureFile {
  readonly path: string;
  readonly absolute: string;
}

/**
 * Writes the site of a Book to `outDir`. The site is built whole in a new folder beside it and put in
 * place by renaming: a build that fails leaves the last good site as it was. Throws CannotRun where
 * `outDir` holds something else than a published site, or cannot be written.
 */
export async function publishSite(
  book: Book,
  figures: readonly FigureFile[],
  outDir: string,
): Promise<void> {
  const target = resolve(outDir);
  await refuseForeignFolder(target);
  const workshop = await makeWorkshop(target);
  try {
    const site = join(workshop, 'site');
    await buildSite(book, site, await mkdtemp(join(workshop, 'work-')));
    await copyFigures(figures, site);
    await writeFile(
      join(site, siteMarker),
      'Written by tallybolt publish, which replaces this folder as a whole.\n',
    );
    await swapFolders(site, target, join(workshop, 'old'));
  } finally {
    await rm(workshop, { recursive: true, force: true });
  }
}

/** A new folder beside the target: on the same disk, so that renaming is one move. */
async function makeWorkshop(target: string): Promise<string> {
  try {
    await mkdir(dirname(target), { recursive: true });
    return await mkdtemp(join(dirname(target), `.${basename(target)}-in-the-making-`));
  } catch (error) {
    throw new CannotRun(
      `The site cannot be written to ${target}: ${reasonOf(error)}.`,
      'Name another folder with --to.',
    );
  }
}

async function copyFigures(figures: readonly FigureFile[], site: string): Promise<void> {
  for (const { path, absolute } of figures) {
    const copy = resolve(site, path);
    if (!copy.startsWith(join(site, '/')))
      throw new Error(`The path ${path} of a figure leads out of the site.`);
    try {
      await cp(absolute, copy, { force: false, errorOnExist: true });
    } catch (error) {
      throw new CannotRun(
        `The file ${path} cannot be copied to the site: ${reasonOf(error)}.`,
        'See that it can be read, and that no page of the site has the same name.',
      );
    }
  }
}
