import type { Report } from '../../schemas/report.ts';
import type { LinkedManual } from '../link/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { makeReport } from './make-report.ts';
import { partsOf, Share } from './share.ts';
import { sortedFiles } from './sorted-files.ts';

export interface Inspection {
  readonly report: Report;
  readonly linked: LinkedManual;
}

export interface InspectOptions {
  /** The day of the check, YYYY-MM-DD. Without it no waiver expires. */
  readonly today?: string;
}

/** The whole check: texts in, report out. Nothing in the manual can make it throw. */
export function inspect(
  files: ManualFiles,
  version: string,
  { today }: InspectOptions = {},
): Inspection {
  const inOrder = sortedFiles(files);
  const share = new Share();
  share.take(inOrder);
  const { whole } = share;
  const examination = share.examination(whole);
  const looks = partsOf(inOrder).map((path) => examination.lookAt(path));
  const { settings } = share.manual;
  const report = makeReport(looks, {
    title: settings.title,
    version,
    levels: settings.rules,
    titleOf: (id) => whole.outlines.byId.get(id)?.title ?? id,
    today,
  });
  return { report, linked: examination.expanded };
}
