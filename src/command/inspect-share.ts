import { resolve } from 'node:path';
import { inspectShare, type ShareNumber, type Sign, signOf } from '../report/index.ts';
import { compareText, isProcedureFile } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import { fromHere } from './from-here.ts';
import { digest } from './kept-store.ts';
import { announce } from './progress.ts';
import { noReads, readManualFiles, readManualText } from './read-manual-files.ts';
import { say } from './terminal.ts';
import { version } from './version.ts';

/** Checks one share of a manual and prints what `merge` needs of it. What it found, `merge` tells. */
export async function inspectShareCommand(folder: string, share: ShareNumber): Promise<ExitCode> {
  const home = resolve(folder);
  const signs: Sign[] = [];
  const texts = new Map<string, string>();
  const { texts: _, ...others } = await readManualFiles(home, noReads(), (file) => {
    signs.push(signOf(file, digest));
    // The texts of procedures would be most of what is in memory, and few of them are looked at.
    if (isProcedureFile(file.path)) return { ...file, text: '' };
    texts.set(file.path, file.text);
    return file;
  });
  signs.sort((a, b) => compareText(a.path, b.path));
  const told = announce(`Checking share ${share.number} of ${share.of}`, signs.length / share.of);
  const digests = new Map(signs.map((sign) => [sign.path, sign.digest]));
  const checked = await inspectShare(
    {
      ...others,
      signs,
      textOf: async (path) => texts.get(path) ?? (await sameText(home, path, digests.get(path))),
    },
    { version, digest, share, folder: fromHere(home) },
  );
  told();
  say(JSON.stringify(checked));
  return 0;
}

/** A text that is to be as it was when its sign was read. */
async function sameText(
  folder: string,
  path: string,
  digestBefore: string | undefined,
): Promise<string> {
  if (digestBefore === undefined) return '';
  const read = await readManualText(folder, path);
  if ('text' in read && digest(read.text) === digestBefore) return read.text;
  throw new CannotRun(
    `${path} has changed while the manual was being checked.`,
    'Run the check again when nobody writes to the folder.',
  );
}
