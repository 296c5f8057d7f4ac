import type { Report } from '../../schemas/report.ts';
import {
  fails,
  reportAsJunit,
  reportAsMarkdown,
  reportAsSarif,
  reportAsText,
  subjectsOf,
} from '../report/index.ts';
import type { CheckedReport } from './check-folder.ts';
import { fromHere } from './from-here.ts';
import type { ReportFormat } from './report-format.ts';
import { describedRules } from './rule-pages.ts';

/** A report of a checked folder in one of its formats, without colours. */
export async function reportIn(
  format: ReportFormat,
  report: Report,
  checked: CheckedReport,
): Promise<string> {
  switch (format) {
    case 'text':
      return reportAsText(report, checked.textOf);
    case 'json':
      return `${JSON.stringify(report, undefined, 2)}\n`;
    case 'sarif':
      return reportAsSarif(report, {
        rules: await describedRules(),
        levels: checked.levels,
        texts: checked.files.texts,
        folder: fromHere(checked.folder),
        exitCode: fails(report) ? 1 : 0,
      });
    case 'junit':
      return reportAsJunit(report, subjectsOf(checked.procedures, checked.files.texts));
    case 'markdown':
      return reportAsMarkdown(report);
  }
}
