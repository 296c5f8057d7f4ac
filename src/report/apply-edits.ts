import type { Edit } from '../../schemas/finding.ts';

/** A text with edits of it made; they must not overlap, and those at one place are made in their order. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const inOrder = edits.toSorted((a, b) => a.start - b.start || a.end - b.end);
  let result = '';
  let from = 0;
  for (const edit of inOrder) {
    result += text.slice(from, edit.start) + edit.text;
    from = edit.end;
  }
  return result + text.slice(from);
}
