import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { isPicture, judgePicture } from './judge-picture.ts';
import { reasonOf } from './reason-of.ts';

/** A file of the manual that goes along: `path` from the root of what is written, `absolute` on this disk. */
export interface FigureFile {
  readonly path: string;
  readonly absolute: string;
}

/**
 * Copies pictures into a folder that is being written; `whole` says what that is: "the site". A link goes as what it
 * leads to. Throws CannotRun where one cannot be copied, or is no longer what the check saw.
 */
export async function copyFigures(
  figures: readonly FigureFile[],
  folder: string,
  whole: string,
): Promise<void> {
  for (const { path, absolute } of figures) {
    const copy = resolve(folder, path);
    if (!copy.startsWith(join(folder, '/')))
      throw new Error(`The path ${path} of a figure leads out of ${whole}.`);
    try {
      const bytes = await readFile(absolute);
      if (isPicture(path) && judgePicture(path, bytes).state !== 'fit') throw changed(path);
      await mkdir(dirname(copy), { recursive: true });
      await writeFile(copy, bytes, { flag: 'wx' });
    } catch (error) {
      if (error instanceof CannotRun) throw error;
      throw new CannotRun(
        `The file ${path} cannot be copied to ${whole}: ${reasonOf(error)}.`,
        `See that it can be read, and that no page of ${whole} has the same name.`,
      );
    }
  }
}

const changed = (path: string): CannotRun =>
  new CannotRun(
    `The file ${path} has changed since the check, and cannot be shown as it is now.`,
    'Run it again when nobody works on the manual: the check tells what is wrong with it.',
  );
