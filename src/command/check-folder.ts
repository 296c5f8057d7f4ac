import { resolve } from 'node:path';
import { type Inspection, inspect } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { readManualFiles } from './read-manual-files.ts';
import { version } from './version.ts';

export interface Checked extends Inspection {
  readonly folder: string;
  readonly files: ManualFiles;
  readonly textOf: (file: string) => string;
}

/** Reads and checks the manual in a folder. */
export async function checkFolder(folder: string): Promise<Checked> {
  const files = await readManualFiles(resolve(folder));
  const texts = new Map(files.texts.map(({ path, text }) => [path, text]));
  return {
    ...inspect(files, version, { today: new Date().toISOString().slice(0, 10) }),
    folder: resolve(folder),
    files,
    textOf: (file) => texts.get(file) ?? '',
  };
}
