import type { VariantSet } from '../applicability/index.ts';
import type { StatefulItem } from '../catalogue/index.ts';
import { type Counts, tally } from './account.ts';
import type { Run } from './run.ts';

/** The variants in which no assembly that the item is part of is off the machine: only there can others be in its way. */
export function onMachine(run: Run, item: StatefulItem, under: VariantSet): VariantSet {
  const { space, accounts } = run.setting;
  let on = under;
  for (const account of run.precedence.assembliesOf(item).flatMap((one) => accounts.of(one))) {
    const isOff = (counts: Counts): boolean => tally(account, counts, ['out', 'gone']) > 0;
    for (const { set } of run.books.where(account, on, isOff)) on = space.minus(on, set);
  }
  return on;
}
