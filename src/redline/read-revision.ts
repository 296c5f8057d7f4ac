import type { Side } from '../../schemas/redline.ts';
import { readManual } from '../catalogue/index.ts';
import { linkManual } from '../link/index.ts';
import { inspect } from '../report/index.ts';
import { compareText, isProcedureFile, type ManualFiles } from '../source/index.ts';
import { parseProcedure } from '../syntax/index.ts';
import type { Revision } from './make-redline.ts';

/**
 * Reads and checks one side of a redline. Its manual is the authors' own text: what `::reverse` writes out follows
 * from that, and would only be told twice.
 *
 * @param today YYYY-MM-DD, the same for both sides: no finding shall come from the calendar
 */
export function readRevision(
  files: ManualFiles,
  side: Side,
  { version, today }: { readonly version: string; readonly today: string },
): Revision {
  const texts = files.texts.toSorted((a, b) => compareText(a.path, b.path));
  const manual = readManual({ ...files, texts });
  const procedures = texts
    .filter(({ path }) => isProcedureFile(path))
    .flatMap((file) => parseProcedure(file).value ?? []);
  return {
    linked: linkManual(manual.value, procedures, files).value,
    findings: inspect(files, version, { today }).report.findings,
    side,
  };
}
