import { existsSync } from 'node:fs';
import { readdir, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

/** A small file at the root of a published site, by which the next run knows that it may replace the folder. */
export const siteMarker = '.tallybolt-site';

/** Throws CannotRun where the folder holds anything but a published site. A missing or empty folder is fine. */
export async function refuseForeignFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch(() => undefined);
  if (found === undefined) return;
  if (!found.isDirectory()) {
    throw new CannotRun(
      `${folder} is a file, and the site needs a folder.`,
      'Name another folder with --to.',
    );
  }
  const names = await readdir(folder);
  if (names.length === 0 || existsSync(join(folder, siteMarker))) return;
  throw new CannotRun(
    `${folder} holds files that are not a published site (such as ${names.sort().slice(0, 3).join(', ')}), and publishing would delete them.`,
    'Name an empty or a new folder with --to, or empty this one yourself.',
  );
}

/**
 * Puts `fresh` in the place of `target` by renaming; what stood there goes to `old`. If the second
 * rename fails, the first is taken back.
 */
export async function swapFolders(fresh: string, target: string, old: string): Promise<void> {
  const replaces = existsSync(target);
  try {
    if (replaces) await rename(target, old);
  } catch (error) {
    throw cannotReplace(target, error);
  }
  try {
    await rename(fresh, target);
  } catch (error) {
    if (replaces) await rename(old, target);
    throw cannotReplace(target, error);
  }
}

function cannotReplace(target: string, error: unknown): CannotRun {
  return new CannotRun(
    `The new site cannot be put in the place of ${target}: ${reasonOf(error)}.`,
    'Close whatever holds the folder open, then publish again. The old site is still there.',
  );
}
