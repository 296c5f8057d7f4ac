import type { Place } from '../../schemas/finding.ts';

/** The words of a heading, without its marks. */
export function headingEdit(
  text: string,
  { start, end }: Place,
): { readonly from: number; readonly to: number; readonly text: string } {
  const source = text.slice(start.offset, end.offset);
  const [line = ''] = source.split(/\r?\n/, 1);
  const marks = /^#{1,6}[ \t]+/.exec(line)?.[0].length ?? 0;
  const words = line.slice(marks).replace(marks > 0 ? /[ \t]+#*[ \t]*$/ : /[ \t]+$/, '');
  const from = start.offset + marks;
  return { from, to: from + words.length, text: words };
}
