import type { Finding } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';

/** Whether a check fails for a report: some finding above a note is new. */
export const fails = ({ findings }: Report): boolean => findings.some(isFailure);

/** Whether a check fails for this finding. Notes never fail, nor does what the baseline lists. */
export const isFailure = ({ level, known }: Finding): boolean => level !== 'note' && known !== true;
