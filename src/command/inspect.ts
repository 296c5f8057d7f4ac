import type { Finding, Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import { reportAsText } from '../report/index.ts';
import { checkFolder } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import { ruleCalled } from './rule-called.ts';
import { paintFor, say, widthOf } from './terminal.ts';

export interface InspectOptions {
  readonly format: 'text' | 'json';
  /** Only findings of these rules, told or waived, are shown and counted; of all rules when empty. */
  readonly only: readonly string[];
  /** Findings below this level neither fail nor show. */
  readonly level: Level;
}

const weight: Record<Level, number> = { error: 2, warning: 1, note: 0 };

/** Checks a manual and prints what it finds. 0 clean, 1 findings of warning or error level. */
export async function inspectCommand(folder: string, options: InspectOptions): Promise<ExitCode> {
  for (const id of options.only) ruleCalled(id);
  const checked = await checkFolder(folder);
  const report = select(checked.report, options);
  if (options.format === 'json') say(JSON.stringify(report, undefined, 2));
  else say(reportAsText(report, checked.textOf, paintFor(process.stdout), widthOf(process.stdout)));
  return report.summary.error + report.summary.warning > 0 ? 1 : 0;
}

function select(report: Report, { only, level }: InspectOptions): Report {
  const isAsked = (rule: string): boolean => only.length === 0 || only.includes(rule);
  const isShown = (finding: Finding): boolean =>
    weight[finding.level] >= weight[level] && isAsked(finding.rule);
  const findings = report.findings.filter(isShown);
  const waivers = report.waivers.flatMap((waiver) => {
    const waived = waiver.waived.filter(isShown);
    const isEmptied = waived.length === 0 && waiver.waived.length > 0;
    return isAsked(waiver.rule) && !isEmptied ? [{ ...waiver, waived }] : [];
  });
  const count = (one: Level) => findings.filter((finding) => finding.level === one).length;
  const summary = {
    error: count('error'),
    warning: count('warning'),
    note: count('note'),
    waived: waivers.reduce((sum, { waived }) => sum + waived.length, 0),
  };
  return { ...report, findings, waivers, summary };
}
