import { isManualText, type ManualFiles } from '../source/index.ts';
import type { GitPlace } from './git-place.ts';
import { gitTreeOf } from './git-tree.ts';
import { isPicture, judgePicture, largestPicture, tooLarge } from './judge-picture.ts';
import { filesOf } from './read-manual-files.ts';
import { largestText, textIn, tooLong } from './text-in.ts';

/**
 * Reads a manual as a commit has it, out of git's store: nothing is checked out. Undefined where that commit has no
 * such folder, or no manual in it.
 */
export async function readManualAt(
  commit: string,
  place: GitPlace,
): Promise<ManualFiles | undefined> {
  const tree = await gitTreeOf(commit, place);
  if (tree === undefined || !tree.files.includes('manual.yaml')) return undefined;
  const wanted = tree.files.filter(
    (path) =>
      (isManualText(path) && tree.sizeOf(path) <= largestText) ||
      (isPicture(path) && tree.sizeOf(path) <= largestPicture),
  );
  const contents = await tree.read(wanted);
  return await filesOf(tree, {
    text: async (path) => {
      const bytes = contents.get(path);
      return { path, ...(bytes === undefined ? tooLong(tree.sizeOf(path)) : textIn(bytes)) };
    },
    picture: async (path) => {
      const bytes = contents.get(path);
      return bytes === undefined ? tooLarge(path, tree.sizeOf(path)) : judgePicture(path, bytes);
    },
  });
}
