import about from '../../package.json' with { type: 'json' };
import type { Report } from '../../schemas/report.ts';
import { inspect as inspectManual } from '../report/index.ts';
import { allOf, type GivenFiles } from './given-files.ts';

export interface InspectOptions {
  /** The day of the check, YYYY-MM-DD. Without it no waiver expires. */
  readonly today?: string;
}

/**
 * The whole check of a manual: texts in, report out, the same that `tallybolt inspect --format json` prints.
 * Nothing is read from disk, nothing in the texts makes it throw, and the same input gives the same report.
 */
export function inspect(files: GivenFiles, options: InspectOptions = {}): Report {
  return inspectManual(allOf(files), about.version, options).report;
}
