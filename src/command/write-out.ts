import { realpath, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { CannotRun } from './cannot-run.ts';
import type { Checked } from './check-folder.ts';
import { reasonOf } from './reason-of.ts';

/**
 * Writes a file beside the manual: whole or not at all. Throws CannotRun where it cannot be written, or is a text or
 * a picture of the manual, which nothing that is made may replace.
 */
export async function writeOut(
  path: string,
  text: string,
  { folder, files }: Pick<Checked, 'folder' | 'files'>,
): Promise<void> {
  const wanted = await realPlace(resolve(path));
  const own = await ownFile(wanted, folder, files);
  if (own !== undefined)
    throw new CannotRun(`${path} is a ${own} of the manual.`, 'Name another file to write to.');
  try {
    // A pipe or a device such as /dev/stdout is written to: putting a file in its place would take it away.
    if (await isPipe(wanted)) await writeFile(wanted, text);
    else await writeFileAtomic(wanted, text);
  } catch (error) {
    const reason = reasonOf(error);
    throw new CannotRun(
      `${path} cannot be written: ${reason === 'it is gone' ? 'there is no such folder' : reason}.`,
      'Nothing there was changed. Name a file in a folder that is there and that you may write to.',
    );
  }
}

/** What a file is in a manual: a text or a picture; undefined where it is neither. */
async function ownFile(
  wanted: string,
  folder: string,
  { texts, unreadable, pictures = [] }: Checked['files'],
): Promise<'text' | 'picture' | undefined> {
  const home = await realPlace(folder);
  if (!wanted.startsWith(join(home, sep))) return undefined;
  const isOneOf = async (files: readonly { readonly path: string }[]): Promise<boolean> => {
    for (const { path } of files) if ((await realPlace(join(home, path))) === wanted) return true;
    return false;
  };
  if (await isOneOf([...texts, ...unreadable])) return 'text';
  return (await isOneOf(pictures)) ? 'picture' : undefined;
}

/** Where a path leads, through links, though there may be no file yet. */
async function realPlace(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch {
    const folder = await realpath(dirname(path)).catch(() => dirname(path));
    return join(folder, basename(path));
  }
}

async function isPipe(path: string): Promise<boolean> {
  const found = await stat(path).catch(() => undefined);
  return found !== undefined && !found.isFile() && !found.isDirectory();
}
