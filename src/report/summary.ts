import type { Finding, Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { printable } from './printable.ts';

/** One line: how much was checked and what was found. */
export const summaryAsText = (report: Report): string =>
  `${printable(report.manual.title)}: ${countsAsText(report)}\n`;

/** The same without the title. */
export function countsAsText({ manual, findings, summary, baseline }: Report): string {
  const checked = `${counted(manual.procedures, 'procedure')}, ${counted(manual.steps, 'step')}, ${counted(manual.actions, 'action')}`;
  const passed = summary.waived > 0 ? `, ${summary.waived} waived` : '';
  const found = levelsOf(findings.filter(({ known }) => known !== true));
  const verdict =
    baseline === undefined ? found || 'everything balances' : against(baseline, found);
  return `${checked} checked; ${verdict}${passed}.`;
}

/** What of the baseline is gone, and what to do then; nothing where all of it is still found. */
export function goneAsText({ baseline }: Report): string {
  const gone = baseline?.gone.reduce((sum, { count }) => sum + count, 0) ?? 0;
  if (baseline === undefined || gone === 0) return '';
  const of = counted(baseline.listed, 'known finding');
  const are = gone === 1 ? 'is' : 'are';
  return `${gone} of ${of} ${are} gone: write the baseline again with --write-baseline, so that they cannot come back unseen.\n`;
}

/** "1 fastener", "2 fasteners" */
export const counted = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;

function against(baseline: NonNullable<Report['baseline']>, found: string): string {
  const news = baseline.new === 0 ? 'nothing new' : `${baseline.new} new (${found})`;
  return `${news}, ${baseline.known} known`;
}

function levelsOf(findings: readonly Finding[]): string {
  const levels: readonly Level[] = ['error', 'warning', 'note'];
  return levels
    .map((level) => ({ level, n: findings.filter((one) => one.level === level).length }))
    .filter(({ n }) => n > 0)
    .map(({ level, n }) => counted(n, level))
    .join(', ');
}
