import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, rmdir, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { TextFile } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

const advice = 'Name a new or an empty folder. Nothing was changed.';

/** Throws CannotRun where a new folder cannot be made without touching something that is there. */
export async function refuseUsedFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch((error: unknown) => {
    if (reasonOf(error) === 'it is gone') return undefined;
    throw new CannotRun(`${folder} cannot be read: ${reasonOf(error)}.`, advice);
  });
  if (found === undefined) return;
  if (!found.isDirectory()) throw new CannotRun(`${folder} is a file.`, advice);
  const names = await readdir(folder).catch((error: unknown) => {
    throw new CannotRun(`${folder} cannot be read: ${reasonOf(error)}.`, advice);
  });
  if (names.length === 0) return;
  const some = names.sort().slice(0, 3).join(', ');
  throw new CannotRun(
    `${folder} is not empty (it holds ${some}${names.length > 3 ? ', …' : ''}), and nothing there is overwritten.`,
    advice,
  );
}

/**
 * Writes a folder that was not there, or was empty: whole or not at all. The files are written beside or inside it and
 * put in place by renaming. Throws CannotRun where it holds something or cannot be written.
 */
export async function writeNewFolder(folder: string, files: readonly TextFile[]): Promise<void> {
  const target = resolve(folder);
  await refuseUsedFolder(target);
  const isThere = existsSync(target);
  const beside = isThere ? target : dirname(target);
  let made: string | undefined;
  let fresh: string | undefined;
  try {
    made = await mkdir(beside, { recursive: true });
    fresh = await mkdtemp(join(beside, `.${basename(target)}-in-the-making-`));
    for (const { path, text } of files) {
      await mkdir(dirname(join(fresh, path)), { recursive: true });
      await writeFile(join(fresh, path), text);
    }
    if (isThere) await moveInto(fresh, target);
    else await rename(fresh, target);
  } catch (error) {
    if (fresh !== undefined) await rm(fresh, { recursive: true, force: true });
    if (made !== undefined) await removeEmpty(beside, made);
    if (error instanceof CannotRun) throw error;
    throw new CannotRun(`${target} cannot be written: ${reasonOf(error)}.`, advice);
  }
}

/** The folder itself stays, since somebody may stand in it; what was moved before a failure is taken out again. */
async function moveInto(fresh: string, target: string): Promise<void> {
  const moved: string[] = [];
  try {
    for (const name of (await readdir(fresh)).sort()) {
      if (existsSync(join(target, name))) throw new CannotRun(`${name} has come up in ${target}.`);
      await rename(join(fresh, name), join(target, name));
      moved.push(name);
    }
    await rmdir(fresh);
  } catch (error) {
    for (const name of moved) await rename(join(target, name), join(fresh, name));
    throw error;
  }
}

/** Takes away the folders that were made on the way, from the innermost to `first`, as far as they are empty. */
async function removeEmpty(innermost: string, first: string): Promise<void> {
  for (let at = innermost; at.length >= first.length; at = dirname(at)) {
    try {
      await rmdir(at);
    } catch {
      return;
    }
  }
}
