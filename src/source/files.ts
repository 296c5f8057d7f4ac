/** A text file of the manual. `path` is relative to the manual's folder, with `/`. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** What the edge has read: texts, files that could not be read as text, and the names of all others (figures). */
export interface ManualFiles {
  readonly texts: readonly TextFile[];
  readonly unreadable: readonly { readonly path: string; readonly reason: string }[];
  readonly others: readonly string[];
}
