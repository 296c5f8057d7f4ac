/** Replace the text between two offsets. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A text with edits made. Edits must not overlap. */
export function edited(text: string, edits: readonly Edit[]): string {
  let result = text;
  for (const { start, end, text: by } of edits.toSorted((a, b) => b.start - a.start)) {
    result = result.slice(0, start) + by + result.slice(end);
  }
  return result;
}
