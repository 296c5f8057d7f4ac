import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { outputFolder } from './output-folder.ts';
import { type FolderKind, swapFolders } from './publish-folder.ts';
import { isOfSystem, reasonOf } from './reason-of.ts';
import { clearWorkshop, makeWorkshop, replacedIn } from './workshop.ts';

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
  const target = await outputFolder(folder, kind, undefined);
  const workshop = await makeWorkshop(target).catch((error: unknown) => {
    throw cannotWrite(target, kind, error, `Name another folder with ${kind.option}.`);
  });
  try {
    const fresh = join(workshop, 'fresh');
    await filled(fresh, await mkdtemp(join(workshop, 'work-')));
    await swapFolders(fresh, target, replacedIn(workshop), kind);
  } finally {
    // Where the old one could not be brought back, it stays in the workshop: the message says where.
    if (existsSync(target) || !existsSync(replacedIn(workshop))) await clearWorkshop(workshop);
  }

  async function filled(fresh: string, work: string): Promise<void> {
    try {
      await mkdir(fresh);
      await fill(fresh, work);
      await writeFile(
        join(fresh, kind.marker),
        `Written by tallybolt ${kind.verb}, which replaces this folder as a whole.\n`,
      );
    } catch (error) {
      if (error instanceof CannotRun || !isOfSystem(error)) throw error;
      const kept = existsSync(target)
        ? `The old ${kind.whole} is still there`
        : 'Nothing was written';
      throw cannotWrite(target, kind, error, `${kept}. Put that right, then run it again.`);
    }
  }
}

function cannotWrite(
  target: string,
  { whole }: FolderKind,
  error: unknown,
  advice: string,
): CannotRun {
  return new CannotRun(`The ${whole} cannot be written to ${target}: ${reasonOf(error)}.`, advice);
}
