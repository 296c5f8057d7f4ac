/** A text file of the manual. `path` is relative to the manual's folder, with `/`. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** A file that is part of the manual and could not be read: why, and what to do where that is known. */
export interface UnreadableFile {
  readonly path: string;
  readonly reason: string;
  readonly advice?: string;
}

/** Width and height as a sheet shows it, in units of the picture's own: pixels, or those of an SVG. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** What the edge has seen of a picture. One that is not `fit` cannot be shown on a sheet. */
export type PictureFile = { readonly path: string } & (
  | {
      readonly state: 'fit';
      /** Undefined for an SVG that does not say it. */
      readonly size: PictureSize | undefined;
    }
  | { readonly state: 'large'; readonly bytes: number; readonly limit: number }
  | { readonly state: 'broken'; readonly reason: string }
  /** An SVG with more than lines and surfaces; `what` is such as "a script". */
  | { readonly state: 'unsafe'; readonly what: string }
);

/** What the edge has read: texts, files that could not be read as text, and the names of all others (figures). */
export interface ManualFiles {
  readonly texts: readonly TextFile[];
  readonly unreadable: readonly UnreadableFile[];
  readonly others: readonly string[];
  /** Pictures among the others that were looked into; left out where nobody did. */
  readonly pictures?: readonly PictureFile[];
}

/** Whether a path of a manual is that of a procedure. */
export const isProcedureFile = (path: string): boolean =>
  path.startsWith('procedures/') && path.endsWith('.md');
