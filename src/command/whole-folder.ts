import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { type FolderKind, refuseForeignFolder, swapFolders } from './publish-folder.ts';
import { reasonOf } from './reason-of.ts';

/**
 * Writes a folder whole or not at all: `fill` gets a new folder beside the target, and one for what it needs
 * on the way; the new folder is put in place by renaming, so that a failure leaves the last good one as it
 * was. Throws CannotRun where the target holds something else, or cannot be written.
 */
export async function writeWholeFolder(
  folder: string,
  kind: FolderKind,
  fill: (fresh: string, work: string) => Promise<void>,
): Promise<void> {
  const target = resolve(folder);
  await refuseForeignFolder(target, kind);
  const workshop = await makeWorkshop(target, kind);
  try {
    const fresh = join(workshop, 'fresh');
    await mkdir(fresh);
    await fill(fresh, await mkdtemp(join(workshop, 'work-')));
    await writeFile(
      join(fresh, kind.marker),
      `Written by tallybolt ${kind.verb}, which replaces this folder as a whole.\n`,
    );
    await swapFolders(fresh, target, join(workshop, 'old'), kind);
  } finally {
    await rm(workshop, { recursive: true, force: true });
  }
}

/** A new folder beside the target: on the same disk, so that renaming is one move. */
async function makeWorkshop(target: string, { whole, option }: FolderKind): Promise<string> {
  try {
    await mkdir(dirname(target), { recursive: true });
    return await mkdtemp(join(dirname(target), `.${basename(target)}-in-the-making-`));
  } catch (error) {
    throw new CannotRun(
      `The ${whole} cannot be written to ${target}: ${reasonOf(error)}.`,
      `Name another folder with ${option}.`,
    );
  }
}
