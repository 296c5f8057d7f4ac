import type { Edit } from '../../schemas/finding.ts';

/** Edits have \n; a text of CRLF stays one. */
export function withLineEndsOf(text: string, edit: Edit): Edit {
  if (!text.includes('\r\n')) return edit;
  return { ...edit, text: edit.text.replaceAll(/\r?\n/g, '\r\n') };
}
