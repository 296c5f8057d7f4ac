import type { Locator } from '../source/index.ts';
import type { SyntaxFact } from './facts.ts';
import { deepestLine } from './nesting.ts';

/**
 * What a procedure may measure. A Markdown parser takes time that grows with the square of some of these,
 * and a stack that grows with the nesting; far below the point where it hurts stands any printable sheet.
 */
export const limits = {
  /** About 100 printed pages of text. */
  characters: 500_000,
  lines: 5_000,
  linesTogether: 2_000,
  emphasisTogether: 2_000,
  marksTogether: 5_000,
  nesting: 64,
} as const;

/** The first measure of a text that is beyond its limit, for which the text is not parsed at all. */
export function beyondLimits(locator: Locator): SyntaxFact | undefined {
  // Line ends of all kinds as one character each, so that offsets stay.
  const text = locator.text.replaceAll('\r\n', ' \n').replaceAll('\r', '\n');
  const lines = text.split('\n');
  const whole = { start: 0, end: 0 };
  const large =
    tooLarge(locator, whole, 'characters in the file', text.length, limits.characters) ??
    tooLarge(locator, whole, 'lines in the file', lines.length, limits.lines);
  if (large !== undefined) return large;
  for (const together of linesTogether(lines)) {
    const beyond = beyondTogether(locator, together);
    if (beyond !== undefined) return beyond;
  }
  const { depth, start, end } = deepestLine(lines);
  if (depth <= limits.nesting) return undefined;
  return { kind: 'too-deep', place: locator.place(start, end), depth };
}

/** Lines with no empty line between them. */
interface Together {
  readonly start: number;
  readonly lines: readonly string[];
}

function beyondTogether(locator: Locator, { start, lines }: Together): SyntaxFact | undefined {
  const span = { start, end: start + (lines[0]?.length ?? 0) };
  const block = lines.join('\n');
  const measures = [
    ['lines', lines.length, limits.linesTogether],
    ['asterisks and underscores', emphasisIn(block), limits.emphasisTogether],
    ['brackets, colons and the like', marksIn(block), limits.marksTogether],
  ] as const;
  for (const [what, found, limit] of measures) {
    const beyond = tooLarge(locator, span, `${what} without an empty line between`, found, limit);
    if (beyond !== undefined) return beyond;
  }
  return undefined;
}

function tooLarge(
  locator: Locator,
  { start, end }: { start: number; end: number },
  what: string,
  found: number,
  limit: number,
): SyntaxFact | undefined {
  if (found <= limit) return undefined;
  return { kind: 'too-large', place: locator.place(start, end), what, found, limit };
}

function* linesTogether(lines: readonly string[]): Generator<Together> {
  let offset = 0;
  let start = 0;
  let together: string[] = [];
  for (const line of lines) {
    if (!/^[\s>]*$/.test(line)) {
      if (together.length === 0) start = offset;
      together.push(line);
    } else if (together.length > 0) {
      yield { start, lines: together };
      together = [];
    }
    offset += line.length + 1;
  }
  if (together.length > 0) yield { start, lines: together };
}

/** Marks that can begin or end emphasis: those with white space on both sides, such as lines to fill in, cannot. */
function emphasisIn(block: string): number {
  let count = 0;
  for (const { 0: run, index } of block.matchAll(/[*_~]+/g)) {
    const around = [block[index - 1] ?? ' ', block[index + run.length] ?? ' '];
    if (around.some((character) => /\S/.test(character))) count += run.length;
  }
  return count;
}

function marksIn(block: string): number {
  let count = 0;
  for (const _ of block.matchAll(/[[\]{}<>:`&!\\]/g)) count += 1;
  return count;
}
