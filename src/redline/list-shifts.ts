import { compareText } from '../source/index.ts';
import type { Shift } from './fact.ts';

/** What came into a list and what went out of it, each in order. */
export function listShifts(
  kind: Shift['kind'],
  before: readonly string[],
  after: readonly string[],
): readonly Shift[] {
  const gone = [...new Set(before)].filter((one) => !after.includes(one)).sort(compareText);
  const fresh = [...new Set(after)].filter((one) => !before.includes(one)).sort(compareText);
  return [
    ...gone.map((one): Shift => ({ kind, before: one })),
    ...fresh.map((one): Shift => ({ kind, after: one })),
  ];
}
