import { type Baseline, baselineFormat, type KnownFinding } from '../../../schemas/baseline.ts';
import type { Report } from '../../../schemas/report.ts';
import { againstBaseline } from './against-baseline.ts';
import { inOrder } from './in-order.ts';

/** A baseline without what a report no longer has. Nothing is ever added. */
export function tightened(baseline: Baseline, report: Report): Baseline {
  const gone = new Map(
    againstBaseline(report, baseline).baseline?.gone.map(({ print, count }) => [print, count]),
  );
  const alike = Map.groupBy(baseline.known, ({ print }) => print);
  const known = [...alike].flatMap(([print, [first, ...others]]): KnownFinding[] => {
    if (first === undefined) return [];
    const listed = others.reduce((sum, { count }) => sum + count, first.count);
    const count = listed - (gone.get(print) ?? 0);
    return count > 0 ? [{ ...first, count }] : [];
  });
  return { baseline: baselineFormat, known: inOrder(known) };
}
