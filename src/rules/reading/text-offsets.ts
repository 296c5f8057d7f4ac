/**
 * Where each letter of a text stands in the file. Markdown takes away escapes, character references and the
 * indentation of later lines, so the text is walked beside its source.
 */
export function offsetsOf(value: string, source: string, from: number): number[] {
  const offsets: number[] = [];
  let at = from;
  for (let i = 0; i < value.length; i++) {
    at = beginOf(value.charAt(i), source, at, offsets.at(-1));
    offsets.push(at);
    at += widthAt(value.charAt(i), source, at);
  }
  return offsets;
}

/** The next place in the source that can stand for a letter: past the backslash or the indentation before it. */
function beginOf(letter: string, source: string, at: number, last: number | undefined): number {
  if (source.charAt(at) === '\\' && source.charAt(at + 1) === letter && letter !== '\\')
    return at + 1;
  if (source.charAt(at) === letter) return at;
  if (last === undefined || source.charAt(last) !== '\n') return at;
  let next = at;
  while (/[ \t>]/.test(source.charAt(next)) && source.charAt(next) !== letter) next++;
  return source.charAt(next) === letter ? next : at;
}

const reference = /^&(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z\d]{1,31});/i;

function widthAt(letter: string, source: string, at: number): number {
  if (source.charAt(at) !== '&') return 1;
  const width = reference.exec(source.slice(at, at + 40))?.[0].length ?? 1;
  return letter === '&' && width === 1 ? 1 : width;
}
