import { existsSync, renameSync } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

/** A folder that a command writes as a whole, and replaces when it runs again. */
export interface FolderKind {
  /** A small file at its root, by which the next run knows that it may replace the folder. */
  readonly marker: string;
  /** What is in it: "site". */
  readonly whole: string;
  /** The same as one of several: "a published site". */
  readonly one: string;
  readonly verb: string;
  /** The option that names the folder: `--to`. */
  readonly option: string;
}

export const siteFolder: FolderKind = {
  marker: '.tallybolt-site',
  whole: 'site',
  one: 'a published site',
  verb: 'publish',
  option: '--to',
};

export const ditaFolder: FolderKind = {
  marker: '.tallybolt-dita',
  whole: 'export',
  one: 'a manual that was handed over',
  verb: 'hand-over',
  option: '--into',
};

/** Files whose folder is none of a manual's own. */
export const folderMarkers: readonly string[] = [siteFolder.marker, ditaFolder.marker];

/** Throws CannotRun where the folder holds anything but what `kind` says. A missing or empty folder is fine. */
export async function refuseForeignFolder(
  folder: string,
  { marker, whole, one, verb, option }: FolderKind,
): Promise<void> {
  const found = await stat(folder).catch(() => undefined);
  if (found === undefined) return;
  if (!found.isDirectory()) {
    throw new CannotRun(
      `${folder} is a file, and the ${whole} needs a folder.`,
      `Name another folder with ${option}.`,
    );
  }
  const names = await readdir(folder);
  if (names.length === 0 || existsSync(join(folder, marker))) return;
  throw new CannotRun(
    `${folder} holds files that are not ${one} (such as ${names.sort().slice(0, 3).join(', ')}), and ${verb} would delete them.`,
    `Name an empty or a new folder with ${option}, or empty this one yourself.`,
  );
}

/**
 * Puts `fresh` in the place of `target` by renaming; what stood there goes to `old`. If the second
 * rename fails, the first is taken back. Nothing is done between the two, so that the target is away for
 * as short a time as the system can make it.
 */
export async function swapFolders(
  fresh: string,
  target: string,
  old: string,
  kind: FolderKind,
): Promise<void> {
  const replaces = existsSync(target);
  try {
    if (replaces) renameSync(target, old);
  } catch (error) {
    throw cannotReplace(target, kind, error, `The old ${kind.whole} is still there.`);
  }
  try {
    renameSync(fresh, target);
  } catch (error) {
    throw cannotReplace(target, kind, error, replaces ? putBack(old, target, kind) : '');
  }
}

/** Where the old folder is now, in words. */
function putBack(old: string, target: string, { whole }: FolderKind): string {
  try {
    renameSync(old, target);
    return `The old ${whole} is still there.`;
  } catch {
    return existsSync(target)
      ? `Another run has put its ${whole} there.`
      : `The old ${whole} is in ${old}: move it back to ${target}.`;
  }
}

function cannotReplace(
  target: string,
  { whole, option }: FolderKind,
  error: unknown,
  state: string,
): CannotRun {
  return new CannotRun(
    `The new ${whole} cannot be put in the place of ${target}: ${reasonOf(error)}.`,
    `Close whatever holds the folder open, then run it again; where a disk is mounted, name a folder in it: ${option} ${join(target, whole)}. ${state}`.trim(),
  );
}
