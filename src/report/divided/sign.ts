import { type Outline, outlineOfFront } from '../../link/index.ts';
import { isProcedureFile, type ManualFiles, type TextFile } from '../../source/index.ts';
import { parseFront } from '../../syntax/index.ts';
import type { Digest } from '../kept/look-keys.ts';

/** What a share knows of every text of the manual. Plain data, short beside the text. */
export interface Sign {
  readonly path: string;
  readonly length: number;
  readonly digest: string;
  /** Of a procedure, as far as its front matter says it. */
  readonly outline: Outline | undefined;
}

export function signOf(file: TextFile, digest: Digest): Sign {
  const { path, text } = file;
  const front = isProcedureFile(path) ? parseFront(file) : undefined;
  return {
    path,
    length: text.length,
    digest: digest(text),
    outline: front && apart(outlineOfFront(front)),
  };
}

/** What a share of a manual has to work with: a sign of each text, in order of path, and the text itself on demand. */
export interface SignedFiles extends Omit<ManualFiles, 'texts'> {
  readonly signs: readonly Sign[];
  /** Empty where there is no such file. */
  readonly textOf: (path: string) => Promise<string>;
}

/** A copy whose strings are no parts of the text, which would stay in memory with them. */
const apart = (outline: Outline): Outline => JSON.parse(JSON.stringify(outline));
