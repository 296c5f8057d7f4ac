import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { ManualFiles, TextFile } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import { reasonOf } from './reason-of.ts';
import { type Refused, walkFolder } from './walk-folder.ts';

/** Texts larger than this are no procedures; reading on would only use up memory. */
const largestText = 8 * 1024 * 1024;

const isText = (path: string): boolean =>
  /^(manual\.yaml|machines\/.*\.ya?ml|procedures\/.*\.md)$/.test(path);

/** Whether a link here is meant as a part of the manual, and must not be passed over. */
const isOurs = (path: string): boolean => /^(machines|procedures|figures)(\/|$)/.test(path);

/** Reads a manual's folder. Links to files outside it are not followed. Throws CannotRun where there is no manual. */
export async function readManualFiles(folder: string): Promise<ManualFiles> {
  await refuseOtherThanFolder(folder);
  const { files, refused } = await walkFolder(folder);
  if (!files.includes('manual.yaml')) throw withoutManual(folder, refused);
  const texts: TextFile[] = [];
  const unreadable = refused
    .filter(({ path, kind }) => isText(path) || (kind === 'link' && isOurs(path)))
    .map(({ path, reason }) => ({ path, reason }));
  const others: string[] = [];
  for (const path of files) {
    if (!isText(path)) others.push(path);
    else {
      const read = await readText(join(folder, path));
      if ('text' in read) texts.push({ path, text: read.text });
      else unreadable.push({ path, reason: read.reason });
    }
  }
  return { texts, unreadable, others };
}

async function refuseOtherThanFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch((error: unknown) => {
    if (reasonOf(error) === 'it is gone')
      throw new CannotRun(`There is no folder ${folder}.`, 'Check the spelling of the path.');
    throw new CannotRun(`The folder ${folder} cannot be read: ${reasonOf(error)}.`);
  });
  if (!found.isDirectory()) {
    throw new CannotRun(
      `${folder} is a file.`,
      'Name the folder of the manual, the one with manual.yaml in it.',
    );
  }
}

function withoutManual(folder: string, refused: readonly Refused[]): CannotRun {
  const itself = refused.find(({ path }) => path === 'manual.yaml');
  if (itself !== undefined)
    return new CannotRun(`manual.yaml in ${folder} cannot be read: ${itself.reason}.`);
  return new CannotRun(
    `There is no manual.yaml in ${folder}.`,
    'A manual is a folder with manual.yaml, machines/ and procedures/. Name that folder, or start in it.',
  );
}

async function readText(path: string): Promise<{ text: string } | { reason: string }> {
  try {
    const { size } = await stat(path);
    if (size > largestText)
      return {
        reason: `it is ${Math.round(size / 1024 / 1024)} MB; a text of the manual may have 8 MB`,
      };
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path)) };
  } catch (error) {
    if (error instanceof TypeError) return { reason: 'it is not UTF-8 text' };
    return { reason: reasonOf(error) };
  }
}
