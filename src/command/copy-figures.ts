import { cp } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';

/** A file of the manual that goes along: `path` from the root of what is written, `absolute` on this disk. */
export interface FigureFile {
  readonly path: string;
  readonly absolute: string;
}

/** Copies pictures into a folder that is being written; `whole` says what that is: "the site". */
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
      await cp(absolute, copy, { force: false, errorOnExist: true });
    } catch (error) {
      throw new CannotRun(
        `The file ${path} cannot be copied to ${whole}: ${reasonOf(error)}.`,
        `See that it can be read, and that no page of ${whole} has the same name.`,
      );
    }
  }
}
