/** Text as the writer types it. */
export function code(text: string): string {
  return `\`${text}\``;
}

/** "a", "a and b", "a, b and c" */
export function allOf(words: readonly string[]): string {
  return joined(words, 'and');
}

/** "a", "a or b", "a, b or c" */
export function oneOf(words: readonly string[]): string {
  return joined(words, 'or');
}

const most = 8;

/** What may be written, shortened where there is much: "`a`, `b` or `c`". */
export function choices(ids: readonly string[]): string {
  const shown = ids.slice(0, most).map(code);
  return ids.length > most ? `${shown.join(', ')} or ${ids.length - most} more` : oneOf(shown);
}

/** What there is, shortened where there is much: "`a`, `b` and `c`". */
export function listed(ids: readonly string[]): string {
  const shown = ids.slice(0, most).map(code);
  return allOf(ids.length > most ? [...shown, `${ids.length - most} more`] : shown);
}

/** The first letter large, as at the start of a sentence. Text in backticks stays as it is. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function joined(words: readonly string[], last: string): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
