import { fileURLToPath } from 'node:url';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { type Inspection, inspect } from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

/** The manuals of this repository: the demo, and two of other trades. */
export const manualFolders = {
  demo: fileURLToPath(new URL('../../content', import.meta.url)),
  lathe: fileURLToPath(new URL('lathe', import.meta.url)),
  'hand-pump': fileURLToPath(new URL('hand-pump', import.meta.url)),
} as const;

export type ManualName = keyof typeof manualFolders;

export const manualFrom = (name: ManualName): Promise<ManualFiles> =>
  readManualFiles(manualFolders[name]);

export const checked = (files: ManualFiles): Inspection => inspect(files, '0.0.0');

/** A copy of a manual in which a text stands in the place of another, which must stand there once. */
export function edited(files: ManualFiles, file: string, from: string, to: string): ManualFiles {
  const before = textOf(files, file);
  if (before.split(from).length !== 2)
    throw new Error(`${JSON.stringify(from)} does not stand in ${file} exactly once`);
  const text = before.replace(from, () => to);
  return {
    ...files,
    texts: files.texts.map((one) => (one.path === file ? { path: file, text } : one)),
  };
}

export function textOf(files: ManualFiles, file: string): string {
  const found = files.texts.find(({ path }) => path === file);
  if (found === undefined) throw new Error(`there is no ${file}`);
  return found.text;
}

/** Number of the line in which a text begins, which must stand in the file once. */
export function lineOf(files: ManualFiles, file: string, wanted: string): number {
  const before = textOf(files, file).split(wanted);
  if (before.length !== 2)
    throw new Error(`${JSON.stringify(wanted)} does not stand in ${file} exactly once`);
  return (before[0] ?? '').split('\n').length;
}
