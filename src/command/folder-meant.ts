import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { nearest } from '../source/index.ts';

/** What to do about a folder that is not there: the folder beside it with nearly that name, if one has. */
export async function folderMeant(folder: string): Promise<string> {
  const near = nearest(basename(folder), await foldersIn(dirname(folder)));
  return near === undefined
    ? 'Check the spelling of the path.'
    : `Did you mean ${join(dirname(folder), near)}?`;
}

/** What to do about a folder that holds no manual: the folders in it that do, if any. */
export async function manualMeant(folder: string): Promise<string> {
  const manuals = (await foldersIn(folder)).filter((name) =>
    existsSync(join(folder, name, 'manual.yaml')),
  );
  const [first] = manuals;
  if (first === undefined)
    return 'A manual is a folder with manual.yaml, machines/ and procedures/. Name that folder, or start in it.';
  return manuals.length === 1
    ? `Did you mean ${join(folder, first)}?`
    : `There are manuals in ${manuals.slice(0, 5).join(', ')}. Name one of them.`;
}

/** Names of the folders in a folder, sorted; none where it cannot be read. */
async function foldersIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(({ name }) => name)
    .sort();
}
