import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { ManualFiles, PictureFile, TextFile, UnreadableFile } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import { isPicture, judgePicture, largestPicture, tooLarge } from './judge-picture.ts';
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
  if (!files.includes('manual.yaml')) throw withoutManual(folder, files, refused);
  const texts: TextFile[] = [];
  const unreadable = refused
    .filter(({ path, kind }) => isText(path) || (kind === 'link' && isOurs(path)))
    .map(({ path, kind, reason }): UnreadableFile => ({ path, reason, advice: adviceOn[kind] }));
  const others: string[] = [];
  for (const path of files) {
    const instead = rightName(path);
    if (isText(path)) {
      const read = await readText(join(folder, path));
      if ('text' in read) texts.push({ path, text: read.text });
      else unreadable.push({ path, ...read });
    } else if (instead !== undefined) {
      unreadable.push({
        path,
        reason: `its name would have to be \`${instead}\``,
        advice: `Rename it to \`${instead}\`.`,
      });
    } else others.push(path);
  }
  const pictures: PictureFile[] = [];
  for (const path of others.filter(isPicture)) pictures.push(await readPicture(folder, path));
  return { texts, unreadable, others, pictures };
}

async function readPicture(folder: string, path: string): Promise<PictureFile> {
  const absolute = join(folder, path);
  try {
    const { size } = await stat(absolute);
    return size > largestPicture
      ? tooLarge(path, size)
      : judgePicture(path, await readFile(absolute));
  } catch (error) {
    return { path, state: 'broken', reason: reasonOf(error) };
  }
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

function withoutManual(
  folder: string,
  files: readonly string[],
  refused: readonly Refused[],
): CannotRun {
  const itself = refused.find(({ path }) => path === 'manual.yaml');
  if (itself !== undefined)
    return new CannotRun(`manual.yaml in ${folder} cannot be read: ${itself.reason}.`);
  const alike = files.find((path) => /^manual\.ya?ml$/i.test(path));
  if (alike !== undefined)
    return new CannotRun(
      `There is no manual.yaml in ${folder}, but there is ${alike}.`,
      'Rename it to manual.yaml.',
    );
  return new CannotRun(
    `There is no manual.yaml in ${folder}.`,
    'A manual is a folder with manual.yaml, machines/ and procedures/. Name that folder, or start in it.',
  );
}

async function readText(path: string): Promise<{ text: string } | Omit<UnreadableFile, 'path'>> {
  try {
    const { size } = await stat(path);
    if (size > largestText)
      return {
        reason: `it is ${Math.round(size / 1024 / 1024)} MB; a text of the manual may have 8 MB`,
        advice: 'Split it into several, or take it out of the manual.',
      };
    return { text: decoder.decode(await readFile(path)) };
  } catch (error) {
    if (error instanceof TypeError)
      return {
        reason: 'it is not UTF-8 text',
        advice: 'Save it again as plain text in UTF-8, or take it out of the manual.',
      };
    return {
      reason: reasonOf(error),
      advice: 'See that you may open and read it, or take it out of the manual.',
    };
  }
}

/** A byte order mark stays in the text, so that offsets are those of the file and it is written back as it was. */
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

const adviceOn: Readonly<Record<Refused['kind'], string>> = {
  folder: 'Give the folder another name, without the ending of a file.',
  link: 'Put the file itself in its place, or take the link out.',
  other: 'Put a file in its place, or take it out of the manual.',
};

/** The path as it must be for a text that only its capital letters, or a longer ending, keep from being one. */
function rightName(path: string): string | undefined {
  if (isText(path)) return undefined;
  const [, folder = '', stem = '', ending = ''] =
    /^(procedures|machines)(\/.*)(\.(?:md|markdown|ya?ml))$/i.exec(path) ?? [];
  const short = ending.toLowerCase().replace('.markdown', '.md');
  const right = `${folder.toLowerCase()}${stem}${short}`;
  return isText(right) ? right : undefined;
}
