import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import PQueue from 'p-queue';
import {
  isManualText,
  type ManualFiles,
  type PictureFile,
  type TextFile,
  type UnreadableFile,
} from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import { folderMeant, manualMeant } from './folder-meant.ts';
import { isPicture, judgePicture, largestPicture, tooLarge } from './judge-picture.ts';
import { reasonOf } from './reason-of.ts';
import { largestText, textIn, tooLong } from './text-in.ts';
import { type Refused, type Walked, walkFolder } from './walk-folder.ts';

/** Whether a link here is meant as a part of the manual, and must not be passed over. */
const isOurs = (path: string): boolean => /^(machines|procedures|figures)(\/|$)/.test(path);

/** What was read of the files of a folder, by path. */
export interface KeptReads {
  readonly texts: Map<string, TextFile | UnreadableFile>;
  readonly pictures: Map<string, PictureFile>;
}

export const noReads = (): KeptReads => ({ texts: new Map(), pictures: new Map() });

/**
 * Reads a manual's folder. Links to files outside it are not followed. Throws CannotRun where there is no manual.
 * A file that stands in `kept` is not read anew, one that is read is put there: of a text, what `keeping` makes of it.
 */
export async function readManualFiles(
  folder: string,
  kept: KeptReads = noReads(),
  keeping: (file: TextFile) => TextFile = (file) => file,
): Promise<ManualFiles> {
  await refuseOtherThanFolder(folder);
  const { files, refused } = await walkFolder(folder);
  if (!files.includes('manual.yaml')) throw await withoutManual(folder, files, refused);
  const text = async (path: string): Promise<TextFile | UnreadableFile> => {
    const known = kept.texts.get(path);
    if (known !== undefined) return known;
    const read = await readManualText(folder, path);
    const one = 'text' in read ? keeping(read) : read;
    kept.texts.set(path, one);
    return one;
  };
  // Side by side, since most of the time for thousands of files goes by in waiting.
  const queue = new PQueue({ concurrency: 32 });
  await queue.addAll(files.filter(isManualText).map((path) => () => text(path)));
  return await filesOf(
    { files, refused },
    {
      text,
      picture: async (path) => {
        const picture = kept.pictures.get(path) ?? (await readPicture(folder, path));
        kept.pictures.set(path, picture);
        return picture;
      },
    },
  );
}

/** Reads the files of a manual, wherever they are kept. */
export interface FileReader {
  text(path: string): Promise<TextFile | UnreadableFile>;
  picture(path: string): Promise<PictureFile>;
}

/** Which of the files below a folder are texts of the manual, which are pictures, and which nobody can read. */
export async function filesOf({ files, refused }: Walked, read: FileReader): Promise<ManualFiles> {
  const texts: TextFile[] = [];
  const unreadable = refused
    .filter(({ path, kind }) => isManualText(path) || (kind === 'link' && isOurs(path)))
    .map(({ path, kind, reason }): UnreadableFile => ({ path, reason, advice: adviceOn[kind] }));
  const others: string[] = [];
  for (const path of files) {
    const instead = rightName(path);
    if (isManualText(path)) {
      const file = await read.text(path);
      if ('text' in file) texts.push(file);
      else unreadable.push(file);
    } else if (instead !== undefined) {
      unreadable.push({
        path,
        reason: `its name would have to be \`${instead}\``,
        advice: `Rename it to \`${instead}\`.`,
      });
    } else others.push(path);
  }
  const pictures: PictureFile[] = [];
  for (const path of others.filter(isPicture)) pictures.push(await read.picture(path));
  return { texts, unreadable, others, pictures };
}

/** One text of a manual as it is now. */
export async function readManualText(
  folder: string,
  path: string,
): Promise<TextFile | UnreadableFile> {
  return { path, ...(await readText(join(folder, path))) };
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
  const found = await stat(folder).catch(async (error: unknown) => {
    if (reasonOf(error) === 'it is gone')
      throw new CannotRun(`There is no folder ${folder}.`, await folderMeant(folder));
    throw new CannotRun(`The folder ${folder} cannot be read: ${reasonOf(error)}.`);
  });
  if (!found.isDirectory()) {
    throw new CannotRun(
      `${folder} is a file.`,
      'Name the folder of the manual, the one with manual.yaml in it.',
    );
  }
}

async function withoutManual(
  folder: string,
  files: readonly string[],
  refused: readonly Refused[],
): Promise<CannotRun> {
  const itself = refused.find(({ path }) => path === 'manual.yaml');
  if (itself !== undefined)
    return new CannotRun(`manual.yaml in ${folder} cannot be read: ${itself.reason}.`);
  const alike = files.find((path) => /^manual\.ya?ml$/i.test(path));
  if (alike !== undefined)
    return new CannotRun(
      `There is no manual.yaml in ${folder}, but there is ${alike}.`,
      'Rename it to manual.yaml.',
    );
  return new CannotRun(`There is no manual.yaml in ${folder}.`, await manualMeant(folder));
}

async function readText(path: string): Promise<{ text: string } | Omit<UnreadableFile, 'path'>> {
  try {
    const { size } = await stat(path);
    return size > largestText ? tooLong(size) : textIn(await readFile(path));
  } catch (error) {
    return {
      reason: reasonOf(error),
      advice: 'See that you may open and read it, or take it out of the manual.',
    };
  }
}

const adviceOn: Readonly<Record<Refused['kind'], string>> = {
  folder: 'Give the folder another name, without the ending of a file.',
  link: 'Put the file itself in its place, or take the link out.',
  other: 'Put a file in its place, or take it out of the manual.',
};

/** The path as it must be for a text that only its capital letters, or a longer ending, keep from being one. */
function rightName(path: string): string | undefined {
  if (isManualText(path)) return undefined;
  const [, folder = '', stem = '', ending = ''] =
    /^(procedures|machines)(\/.*)(\.(?:md|markdown|ya?ml))$/i.exec(path) ?? [];
  const short = ending.toLowerCase().replace('.markdown', '.md');
  const right = `${folder.toLowerCase()}${stem}${short}`;
  return isManualText(right) ? right : undefined;
}
