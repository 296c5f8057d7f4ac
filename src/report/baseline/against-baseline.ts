import type { Baseline, KnownFinding } from '../../../schemas/baseline.ts';
import type { Report } from '../../../schemas/report.ts';
import { canBeKnown } from './can-be-known.ts';
import { inOrder } from './in-order.ts';
import { printOf } from './print-of.ts';

/**
 * A report that marks what a baseline lists. Of findings that are alike the first ones are known, as many as it
 * lists. The report must be that of the whole manual, all rules and levels: what it lacks counts as gone.
 */
export function againstBaseline(report: Report, baseline: Baseline): Report {
  const left = new Map<string, KnownFinding>();
  for (const one of baseline.known) {
    const before = left.get(one.print)?.count ?? 0;
    left.set(one.print, { ...one, count: before + one.count });
  }
  const listed = [...left.values()].reduce((sum, { count }) => sum + count, 0);
  const findings = report.findings.map((finding) => {
    const print = printOf(finding);
    const one = canBeKnown(finding) ? left.get(print) : undefined;
    if (one === undefined) return { ...finding, known: false };
    if (one.count > 1) left.set(print, { ...one, count: one.count - 1 });
    else left.delete(print);
    return { ...finding, known: true };
  });
  const known = findings.filter((finding) => finding.known).length;
  const counts = { new: findings.length - known, known, listed };
  return { ...report, findings, baseline: { ...counts, gone: inOrder([...left.values()]) } };
}
