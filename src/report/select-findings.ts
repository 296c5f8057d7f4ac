import type { Finding, Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';

export interface Selection {
  /** Only findings of these rules, told or waived, are shown and counted; of all rules when empty. */
  readonly only: readonly string[];
  /** Findings below this level neither fail nor show. */
  readonly level: Level;
}

const weight: Record<Level, number> = { error: 2, warning: 1, note: 0 };

/** The part of a report that was asked for, counted again. */
export function selectFindings(report: Report, { only, level }: Selection): Report {
  const isAsked = ({ rule }: { readonly rule: string }): boolean =>
    only.length === 0 || only.includes(rule);
  const isShown = (finding: Finding): boolean =>
    weight[finding.level] >= weight[level] && isAsked(finding);
  const findings = report.findings.filter(isShown);
  const waivers = report.waivers.flatMap((waiver) => {
    const waived = waiver.waived.filter(isShown);
    const isEmptied = waived.length === 0 && waiver.waived.length > 0;
    return isAsked(waiver) && !isEmptied ? [{ ...waiver, waived }] : [];
  });
  const count = (one: Level) => findings.filter((finding) => finding.level === one).length;
  const summary = {
    error: count('error'),
    warning: count('warning'),
    note: count('note'),
    waived: waivers.reduce((sum, { waived }) => sum + waived.length, 0),
  };
  const selected = { ...report, findings, waivers, summary };
  if (report.baseline === undefined) return selected;
  const gone = report.baseline.gone.filter(isAsked);
  const known = findings.filter((finding) => finding.known).length;
  const matched = report.findings.filter((finding) => finding.known && isAsked(finding)).length;
  const listed = gone.reduce((sum, one) => sum + one.count, matched);
  return { ...selected, baseline: { new: findings.length - known, known, listed, gone } };
}
