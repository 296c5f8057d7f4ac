import type { Finding } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { excerptOf, type Mark } from './excerpt.ts';
import { noPaint, type Paint } from './paint.ts';
import { printable } from './printable.ts';
import { counted, goneAsText, summaryAsText } from './summary.ts';
import { wrap } from './wrap.ts';

/**
 * The report for people: each finding with the author's lines, marks under them, and what to do. `width` is that of
 * the terminal in columns; without it, as in a pipe, no line is broken. What a baseline lists is only counted.
 */
export function reportAsText(
  report: Report,
  textOf: (file: string) => string,
  paint: Paint = noPaint,
  width?: number,
): string {
  const lines = new Map<string, readonly string[]>();
  const linesOf = (file: string): readonly string[] => {
    let found = lines.get(file);
    if (found === undefined) {
      found = textOf(file)
        .replace(/^\uFEFF/, '')
        .split('\n');
      lines.set(file, found);
    }
    return found;
  };
  const blocks = report.findings
    .filter(({ known }) => known !== true)
    .map((finding) => findingAsText(finding, linesOf, paint, width));
  const summary = wrap(summaryAsText(report), width, '  ');
  const gone = goneAsText(report);
  return [
    ...blocks,
    summary + (gone === '' ? '' : wrap(gone, width, '  ')) + waiversAsText(report, paint, width),
  ].join('\n');
}

/** What waivers let pass, and why; nothing where there are none. */
function waiversAsText({ waivers }: Report, paint: Paint, width: number | undefined): string {
  if (waivers.length === 0) return '';
  const lines = waivers.map(({ file, start, rule, item, until, reason, waived }) => {
    const about = item === undefined ? '' : ` of ${item}`;
    const last = until === undefined ? '' : ` until ${until}`;
    const place = paint.strong(`${file}:${start.line}:${start.column}`);
    const why = reason === '' ? 'no reason is given' : printable(reason);
    const what = `${counted(waived.length, 'finding')} by ${paint.faint(rule)}${about}${last}`;
    return wrap(`  ${place}  ${what}: ${why}`, width, '    ');
  });
  return ['', 'Waived:', ...lines, ''].join('\n');
}

function findingAsText(
  finding: Finding,
  linesOf: (file: string) => readonly string[],
  paint: Paint,
  width: number | undefined,
): string {
  const { file, start, level, rule } = finding;
  const when = finding.when === undefined ? '' : ` (when ${printable(finding.when)})`;
  const head = `${paint.strong(`${printable(file)}:${start.line}:${start.column}`)}  ${paint.level[level](level)}  ${paint.faint(rule)}`;
  const marks: Mark[] = [
    { place: finding, label: '', sign: '^' },
    ...finding.related.map(
      (related): Mark => ({ place: related, label: related.label, sign: '-' }),
    ),
  ];
  const help =
    finding.help === undefined
      ? []
      : [wrap(`  ${paint.strong('do:')} ${printable(finding.help)}`, width, '      ')];
  const excerpt = excerptOf(marks, linesOf, file, level, paint, width);
  return [
    head,
    wrap(`  ${printable(finding.message)}${when}`, width, '  '),
    ...excerpt,
    ...help,
    '',
  ].join('\n');
}
