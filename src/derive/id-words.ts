/** An id as words: `part-drained` is "part drained". */
export function idWords(id: string): string {
  return id.replaceAll('-', ' ');
}
