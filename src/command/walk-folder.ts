import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { folderMarkers } from './publish-folder.ts';
import { reasonOf } from './reason-of.ts';

/** What is no file, or a link that is not followed. */
export interface Refused {
  readonly path: string;
  readonly kind: 'folder' | 'link' | 'other';
  readonly reason: string;
}

/** What stands below a folder, by path from it, with `/`, sorted. */
export interface Walked {
  readonly files: readonly string[];
  readonly refused: readonly Refused[];
}

/**
 * Walks a folder. Left out are names with a dot in front, `node_modules` and sites that were published.
 * A link is followed only to a file inside the folder. Throws CannotRun where a folder cannot be read.
 */
export async function walkFolder(folder: string): Promise<Walked> {
  const files: string[] = [];
  const refused: Refused[] = [];
  const home = await realpath(folder);
  const open: string[] = [''];
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    for (const entry of await entriesOf(folder, path)) {
      const below = path === '' ? entry.name : `${path}/${entry.name}`;
      if (entry.isDirectory()) {
        open.push(below);
        refused.push({ path: below, kind: 'folder', reason: 'it is a folder' });
      } else if (entry.isSymbolicLink()) {
        const reason = await faultOfLink(home, below);
        if (reason === undefined) files.push(below);
        else refused.push({ path: below, kind: 'link', reason });
      } else if (entry.isFile()) files.push(below);
      else refused.push({ path: below, kind: 'other', reason: 'it is no file' });
    }
  }
  return { files: files.sort(), refused: refused.sort((a, b) => (a.path < b.path ? -1 : 1)) };
}

async function entriesOf(folder: string, path: string): Promise<readonly Dirent[]> {
  const absolute = join(folder, path);
  const entries = await readdir(absolute, { withFileTypes: true }).catch((error: unknown) => {
    throw new CannotRun(
      `The folder ${absolute} cannot be read: ${reasonOf(error)}.`,
      'See that you may read it, or take it out of the manual.',
    );
  });
  if (path !== '' && entries.some(({ name }) => folderMarkers.includes(name))) return [];
  return entries.filter(({ name }) => !name.startsWith('.') && name !== 'node_modules');
}

/** Why a link is not followed; undefined where it leads to a file inside `home`. */
async function faultOfLink(home: string, path: string): Promise<string | undefined> {
  try {
    const target = await realpath(join(home, path));
    if (!target.startsWith(home.endsWith(sep) ? home : home + sep))
      return 'it is a link that leads out of the folder of the manual';
    return (await stat(target)).isFile() ? undefined : 'it is a link to a folder';
  } catch (error) {
    return `it is a link that leads nowhere (${reasonOf(error)})`;
  }
}
