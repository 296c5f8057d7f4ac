import type { Report } from '../../schemas/report.ts';
import { type Selection, selectFindings } from '../report/index.ts';
import { CannotRun } from './cannot-run.ts';
import { type CheckedReport, checkForReport, type Keeping } from './check-folder.ts';
import { compareWithBaseline, writeBaseline } from './compare-with-baseline.ts';
import type { ExitCode } from './exit-code.ts';
import { ruleCalled } from './rule-called.ts';
import { type Telling, tellReport } from './tell-report.ts';
import { complain, say } from './terminal.ts';

export interface InspectOptions extends Selection, Keeping, Telling {
  /** File of the findings that an old manual is known to have. */
  readonly baseline: string | undefined;
  /** The same, written anew or with less in it. */
  readonly writeBaseline: string | undefined;
}

/** Checks a manual and prints what it finds. 0 clean, 1 findings of warning or error level that no baseline lists. */
export async function inspectCommand(folder: string, options: InspectOptions): Promise<ExitCode> {
  for (const id of options.only) ruleCalled(id);
  refuseHalfBaselines(options);
  const checked = await checkForReport(folder, options);
  const report = selectFindings(await marked(checked, options), options);
  return tellReport(report, checked, options);
}

function refuseHalfBaselines({ baseline, writeBaseline, only, level }: InspectOptions): void {
  if (writeBaseline === undefined) return;
  if (baseline !== undefined) {
    throw new CannotRun(
      'Both --baseline and --write-baseline are given.',
      'Name the file once: --write-baseline compares with it as well.',
    );
  }
  if (only.length > 0 || level !== 'note') {
    throw new CannotRun(
      'A baseline is of the whole manual.',
      'Leave --only and --level out when you write it.',
    );
  }
}

/** The whole report, with known findings marked where a baseline is named. */
async function marked(
  checked: CheckedReport,
  { format, baseline, writeBaseline: written }: InspectOptions,
): Promise<Report> {
  if (written !== undefined) {
    return writeBaseline(checked, written, format === 'text' ? say : complain);
  }
  if (baseline !== undefined) return compareWithBaseline(checked.report, baseline);
  return checked.report;
}
