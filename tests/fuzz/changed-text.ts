import fc from 'fast-check';
import { oddCharacters, valueText } from './pieces.ts';

const edit = fc.record({
  kind: fc.constantFrom('cut', 'copy', 'put', 'put', 'swap', 'number', 'indent', 'value'),
  at: fc.nat(),
  length: fc.nat({ max: 60 }),
  to: fc.nat(),
  piece: fc.oneof(valueText, fc.constantFrom(...oddCharacters)),
});

/** A sound text with a few faults put in, as slips of the hand and broken tools make them. */
export const changedText = (text: string): fc.Arbitrary<string> =>
  fc.array(edit, { minLength: 1, maxLength: 5 }).map((edits) => edits.reduce(applied, text));

type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function applied(text: string, { kind, at, length, to, piece }: Edit): string {
  const start = at % (text.length + 1);
  const end = Math.min(text.length, start + length);
  const into = to % (text.length + 1);
  switch (kind) {
    case 'cut':
      return text.slice(0, start) + text.slice(end);
    case 'copy':
      return text.slice(0, into) + text.slice(start, end) + text.slice(into);
    case 'put':
      return text.slice(0, start) + piece + text.slice(start);
    case 'swap': {
      const lines = text.split('\n');
      const [one, other] = [at % lines.length, to % lines.length];
      return lines
        .map((line, i) => (i === one ? lines[other] : i === other ? lines[one] : line))
        .join('\n');
    }
    case 'number':
      return nth(text, /\d+(?:\.\d+)?/g, to, piece);
    case 'value':
      return nth(text, /(?<=[=:] ?)[^\s{}"']+/g, to, piece);
    case 'indent':
      return nth(text, /^ */gm, to, ' '.repeat(length % 9));
  }
}

/** The text with one of the places that a pattern finds replaced. */
function nth(text: string, pattern: RegExp, which: number, piece: string): string {
  const found = [...text.matchAll(pattern)];
  const one = found[which % Math.max(1, found.length)];
  return one === undefined
    ? text
    : text.slice(0, one.index) + piece + text.slice(one.index + one[0].length);
}
