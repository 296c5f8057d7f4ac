import stringWidth from 'string-width';
import type { Level, Place } from '../../schemas/finding.ts';
import { comparePlaces } from '../source/index.ts';
import type { Paint } from './paint.ts';
import { printable } from './printable.ts';

/** What is marked under a line: the finding itself with `^`, what explains it with `-`. */
export interface Mark {
  readonly place: Place;
  readonly label: string;
  readonly sign: '^' | '-';
}

/** The author's lines with marks under them: those of the finding's file first, each file from top to bottom. */
export function excerptOf(
  marks: readonly Mark[],
  linesOf: (file: string) => readonly string[],
  mainFile: string,
  level: Level,
  paint: Paint,
  columns = Number.POSITIVE_INFINITY,
): string[] {
  const isAside = ({ place }: Mark): number => (place.file === mainFile ? 0 : 1);
  const inOrder = marks.toSorted(
    (a, b) => isAside(a) - isAside(b) || comparePlaces(a.place, b.place),
  );
  const width = Math.max(...inOrder.map(({ place }) => String(place.start.line).length));
  const longest = Math.max(before + 1, Math.min(widest, columns) - width - 7);
  const out: string[] = [];
  let shown: View | undefined;
  let file = mainFile;
  for (const mark of inOrder) {
    const { start } = mark.place;
    const line = printable((linesOf(mark.place.file)[start.line - 1] ?? '').replace(/\r$/, ''));
    if (line === '' && mark.label === '') continue;
    if (mark.place.file !== file) {
      file = mark.place.file;
      shown = undefined;
      out.push(paint.faint(`${' '.repeat(width + 2)} in ${printable(file)}:`));
    }
    if (shown?.number !== start.line || !isInSight(shown, start.column)) {
      shown = viewOf(line, start.line, start.column, longest);
      out.push(`  ${paint.faint(`${String(start.line).padStart(width)} |`)} ${shown.text}`);
    }
    const { indent, signs } = underline(shown, mark);
    const colour = mark.sign === '^' ? paint.level[level] : paint.faint;
    const gutter = `  ${paint.faint(`${' '.repeat(width)} |`)} `;
    const label = printable(mark.label);
    const room = columns - width - 5;
    if (label === '' || stringWidth(`${indent}${signs} ${label}`) <= room)
      out.push(`${gutter}${indent}${colour(label === '' ? signs : `${signs} ${label}`)}`);
    else {
      const back = Math.max(0, Math.min(indent.length, room - stringWidth(label)));
      out.push(
        `${gutter}${indent}${colour(signs)}`,
        `${gutter}${' '.repeat(back)}${colour(label)}`,
      );
    }
  }
  return out;
}

/** A line, or the stretch of a long one, as it is printed. */
interface View {
  readonly number: number;
  /** With … where the line goes on. */
  readonly text: string;
  /** What of the line is seen, as columns from 0, end exclusive. */
  readonly from: number;
  readonly to: number;
  /** Column of the line that the text begins with; one less than `from` where … stands before it. */
  readonly shift: number;
}

/** Columns of a line, its number and the … included. */
const widest = 118;
/** Columns before a mark that stay in sight. */
const before = 20;

function viewOf(line: string, number: number, column: number, longest: number): View {
  const from =
    line.length <= longest ? 0 : Math.max(0, Math.min(column - 1 - before, line.length - longest));
  const to = Math.min(line.length, from + longest);
  const lead = from > 0 ? '…' : '';
  const tail = to < line.length ? '…' : '';
  const text = lead + line.slice(from, to) + tail;
  return { number, text, from, to, shift: from - lead.length };
}

const isInSight = ({ from, to }: View, column: number): boolean =>
  column - 1 >= from && column - 1 <= to;

function underline(view: View, { place, sign }: Mark): { indent: string; signs: string } {
  const start = place.start.column - 1;
  const end = place.end.line === place.start.line ? place.end.column - 1 : view.to;
  const indent = stringWidth(view.text.slice(0, start - view.shift));
  const marked = view.text.slice(start - view.shift, Math.min(end, view.to) - view.shift);
  return { indent: ' '.repeat(indent), signs: sign.repeat(Math.max(1, stringWidth(marked))) };
}
