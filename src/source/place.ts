import type { Place, Point } from '../../schemas/finding.ts';
import { compareText } from './compare-text.ts';

/** Turns offsets of one text into points and places. */
export interface Locator {
  readonly file: string;
  readonly text: string;
  point(offset: number): Point;
  place(start: number, end: number): Place;
}

export function locator(file: string, text: string): Locator {
  const starts = lineStarts(text);
  const point = (offset: number): Point => {
    const at = Math.max(0, Math.min(offset, text.length));
    const line = lineOf(starts, at);
    return { line: line + 1, column: Math.max(0, at - (starts[line] ?? 0)) + 1, offset: at };
  };
  return {
    file,
    text,
    point,
    place: (start, end) => ({ file, start: point(start), end: point(Math.max(start, end)) }),
  };
}

/** The place as plain data, without the members of a longer object. */
export function placeOf({ file, start, end }: Place): Place {
  return { file, start, end };
}

/** Order of places: file, then offset, then end. Never depends on a locale. */
export function comparePlaces(a: Place, b: Place): number {
  return (
    compareText(a.file, b.file) || a.start.offset - b.start.offset || a.end.offset - b.end.offset
  );
}

function lineStarts(text: string): number[] {
  // A byte order mark is no column of the first line.
  const starts = [text.startsWith('\uFEFF') ? 1 : 0];
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  return starts;
}

function lineOf(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
