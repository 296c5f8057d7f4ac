import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import type { FigureFile } from '../../src/command/copy-figures.ts';
import { publishSite } from '../../src/command/publish-site.ts';
import type { Book } from '../../src/render/book.ts';

const rod =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 200" width="640" height="200"><rect x="60" y="80" width="500" height="40" fill="#ddd" stroke="#000" stroke-width="3"/><circle cx="590" cy="100" r="34" fill="none" stroke="#000" stroke-width="3"/></svg>\n';

/** A temporary folder with the fixture's figure in it, for sites to be published beside. */
export interface Bench {
  readonly folder: string;
  readonly figures: readonly FigureFile[];
  publish(book: Book, name: string): Promise<string>;
  clear(): Promise<void>;
}

export async function makeBench(): Promise<Bench> {
  const folder = await mkdtemp(join(tmpdir(), 'tallybolt-site-'));
  const absolute = join(folder, 'rod.svg');
  await writeFile(absolute, rod);
  const figures = [{ path: 'figures/rod.svg', absolute }];
  return {
    folder,
    figures,
    publish: async (book, name) => {
      await publishSite(book, figures, join(folder, name));
      return join(folder, name);
    },
    clear: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Paths of all files below a folder, with `/`, sorted. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** Every file of a site by its path, as text. */
export async function textsBelow(folder: string): Promise<ReadonlyMap<string, string>> {
  const paths = await filesBelow(folder);
  return new Map(
    await Promise.all(
      paths.map(async (path) => [path, await readFile(join(folder, path), 'utf8')] as const),
    ),
  );
}
