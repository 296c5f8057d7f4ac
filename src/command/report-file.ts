import { InvalidArgumentError } from 'commander';
import { type ReportFormat, reportFormats } from './report-format.ts';

/** A file into which the report goes, in a format of its own. */
export interface ReportFile {
  readonly format: ReportFormat;
  readonly path: string;
}

/** Reads `sarif=report.sarif`; the option may be given several times. */
export function reportFiles(words: string, before: readonly ReportFile[] = []): ReportFile[] {
  const at = words.indexOf('=');
  const format = reportFormats.find((one) => one === words.slice(0, at));
  const path = words.slice(at + 1);
  if (at < 0 || format === undefined || path === '') {
    throw new InvalidArgumentError(
      `Write a format and a file, such as sarif=report.sarif; the formats are ${reportFormats.join(', ')}.`,
    );
  }
  return [...before, { format, path }];
}
