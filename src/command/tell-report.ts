import type { Report } from '../../schemas/report.ts';
import { fails, reportAsText } from '../report/index.ts';
import type { CheckedReport } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import type { ReportFile } from './report-file.ts';
import type { ReportFormat } from './report-format.ts';
import { reportIn } from './report-in.ts';
import { paintFor, say, widthOf } from './terminal.ts';
import { writeOut } from './write-out.ts';

export interface Telling {
  /** Of what is printed. */
  readonly format: ReportFormat;
  /** Files that get the report too. */
  readonly reports: readonly ReportFile[];
}

/** Writes and prints what was asked for of a report. 0 clean, 1 findings. */
export async function tellReport(
  report: Report,
  checked: CheckedReport,
  { format, reports }: Telling,
): Promise<ExitCode> {
  for (const { format: wanted, path } of reports) {
    await writeOut(path, await reportIn(wanted, report, checked), checked);
  }
  if (format === 'text') {
    say(reportAsText(report, checked.textOf, paintFor(process.stdout), widthOf(process.stdout)));
  } else say(await reportIn(format, report, checked));
  return fails(report) ? 1 : 0;
}
