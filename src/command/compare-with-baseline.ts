import type { Report } from '../../schemas/report.ts';
import { againstBaseline, baselineAsText, baselineOf, tightened } from '../report/index.ts';
import { baselineIn } from './baseline-file.ts';
import { CannotRun } from './cannot-run.ts';
import type { CheckedReport } from './check-folder.ts';
import { writeOut } from './write-out.ts';

/** The report of a whole manual, marked by the baseline in a file. Throws CannotRun where there is none. */
export async function compareWithBaseline(report: Report, path: string): Promise<Report> {
  const baseline = await baselineIn(path);
  if (baseline === undefined) {
    throw new CannotRun(
      `There is no baseline ${path}.`,
      `Check the spelling, or write it first with --write-baseline ${path}.`,
    );
  }
  return againstBaseline(report, baseline);
}

/**
 * Writes a baseline of all that a report has; where there is one already only takes out what is gone. The report
 * comes back marked by what was written; `tell` gets what was done, line by line.
 */
export async function writeBaseline(
  checked: CheckedReport,
  path: string,
  tell: (line: string) => void,
): Promise<Report> {
  const { report } = checked;
  const before = await baselineIn(path);
  const baseline = before === undefined ? baselineOf(report.findings) : tightened(before, report);
  const marked = againstBaseline(report, baseline);
  const text = baselineAsText(baseline);
  const isSame = before !== undefined && baselineAsText(before) === text;
  if (!isSame) await writeOut(path, text, checked);
  const listed = marked.baseline?.listed ?? 0;
  if (before === undefined) {
    tell(`${path} is written: ${listed} known ${listed === 1 ? 'finding' : 'findings'}.`);
  } else {
    const gone = (againstBaseline(report, before).baseline?.listed ?? 0) - listed;
    tell(
      gone === 0
        ? `${path} stays as it is: none of its ${listed} findings is gone.`
        : `${path} is written again: ${gone} taken out, ${listed} left.`,
    );
  }
  const news = marked.baseline?.new ?? 0;
  if (news > 0) tell(refusal(news, before === undefined));
  return marked;
}

const refusal = (news: number, isFirst: boolean): string => {
  const [they, it] = news === 1 ? ['1 finding is', 'it'] : [`${news} findings are`, 'them'];
  return isFirst
    ? `${they} not in it: what keeps a file from being checked, or a waiver from holding, must be put right.`
    : `${they} new and not in it: put ${it} right, or waive ${it} with a reason.`;
};
