import type { ManualFiles, PictureFile, TextFile, UnreadableFile } from '../source/index.ts';

/** The files of a manual, as a program gives them. Paths are relative to the manual's folder, with `/`. */
export interface GivenFiles {
  /** `manual.yaml`, `machines/<id>.yaml` and `procedures/**\/*.md`, in any order. */
  readonly texts: readonly TextFile[];
  /** Names of all other files: figures. A figure that is used and is not among them is a finding. */
  readonly others?: readonly string[];
  /** What is known of pictures among the others: whether a sheet can show them, and their sizes. */
  readonly pictures?: readonly PictureFile[];
  /** Files that could not be read as text; each is a finding. */
  readonly unreadable?: readonly UnreadableFile[];
}

/** The same with nothing left out. */
export function allOf({
  texts,
  others = [],
  pictures = [],
  unreadable = [],
}: GivenFiles): ManualFiles {
  return { texts, others, pictures, unreadable };
}
