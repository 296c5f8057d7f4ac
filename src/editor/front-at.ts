/** Where the YAML of a front matter begins and ends; undefined where the text begins with none. */
export function frontOf(
  text: string,
): { readonly start: number; readonly end: number } | undefined {
  const opening = /^\uFEFF?---[ \t]*(?:\r\n|\r|\n)/.exec(text);
  if (opening === null) return undefined;
  const start = opening[0].length;
  const closing = /^---[ \t]*$/m.exec(text.slice(start).replaceAll('\r', ' '));
  return { start, end: closing === null ? text.length : start + closing.index };
}

/** Whether an offset stands between the fences of the front matter. */
export function isInFront(text: string, offset: number): boolean {
  const front = frontOf(text);
  return front !== undefined && offset >= front.start && offset <= front.end;
}
