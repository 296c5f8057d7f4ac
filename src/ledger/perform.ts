import type { VariantSet } from '../applicability/index.ts';
import { type Account, type Counts, sameCounts, spread } from './account.ts';
import { expectedAtEnd, startOf } from './contract.ts';
import type { LedgerFact } from './facts.ts';
import type { PerformOp } from './program.ts';
import { rerun } from './rerun.ts';
import type { Run } from './run.ts';
import type { Summary } from './summary.ts';

/**
 * Brings a performed procedure into a run. Where the machine is as the procedure was written for, its
 * contract is all that counts; otherwise its operations run on the books of the caller, and what goes wrong
 * only there is told at the `perform`.
 */
export function performIn(run: Run, op: PerformOp, summary: Summary): void {
  meetStarts(run, op, summary);
  const { space } = run.setting;
  const strange = strangeTo(run, op.under, summary);
  const { linked, facts } = summary;
  if (strange !== space.none)
    rerun(run, { ...op, under: strange }, linked, linked.procedure.sections, facts);
  const rest = space.minus(op.under, strange);
  if (rest !== space.none) apply(run, { ...op, under: rest }, summary);
}

/** The variants in which the machine is not as the procedure was written for, or something is in its way. */
function strangeTo(run: Run, under: VariantSet, summary: Summary): VariantSet {
  const { space, presence } = run.setting;
  const { contract, touched, asked } = summary;
  let strange = space.none;
  for (const account of touched) {
    if (account.aspect === 'pressure') continue;
    const start = startOf(contract, account);
    const there = space.and(under, presence(account.item));
    for (const { set } of run.books.where(account, there, (counts) => !sameCounts(counts, start)))
      strange = space.or(strange, set);
  }
  for (const [account, tests] of asked) {
    const start = startOf(contract, account);
    // Every test is asked of the caller's books, so that its own callers ask it too.
    for (const test of tests) {
      for (const { set } of run.books.broken(account, under, test))
        if (!test(start)) strange = space.or(strange, set);
    }
  }
  return strange;
}

/** Tells of declared starts that are not met, then goes on as if they were. */
function meetStarts(run: Run, op: PerformOp, { linked, contract }: Summary): void {
  for (const account of contract.named) {
    const start = contract.starts(account);
    if (start === undefined) continue;
    const there = run.setting.space.and(op.under, run.setting.presence(account.item));
    const unmet = run.books.where(account, there, (counts) => !sameCounts(counts, start));
    for (const { set, value } of unmet) {
      const told: LedgerFact = {
        kind: 'start-not-met',
        procedure: run.linked.procedure.id,
        place: op.place,
        item: account.item.id,
        when: run.when(set),
        callee: linked.procedure.id,
        state: spread(account, value),
        expected: spread(account, start),
        declared: linked.procedure.placeOf(`starts.${account.item.id}`),
        since: run.journal.last(account, set),
      };
      run.tell(told, set);
      run.books.change(account, set, () => start);
    }
  }
}

function apply(run: Run, op: PerformOp, { contract, changed, relieved, left }: Summary): void {
  for (const account of changed) {
    const end =
      account.aspect === 'pressure'
        ? pressureEnd(account, relieved)
        : expectedAtEnd(contract, account);
    run.books.change(account, op.under, () => end);
    const to = account.states[end.findIndex((n) => n > 0)] ?? '';
    const start = startOf(contract, account);
    const moved = end.reduce((sum, n, i) => sum + Math.max(0, n - (start[i] ?? 0)), 0);
    if (moved > 0) {
      run.journal.add({
        account,
        verb: 'perform',
        under: op.under,
        op,
        moved,
        to,
        inside: left(account),
      });
    } else run.journal.addRoundTrip(account, op.under);
  }
}

const pressureEnd = (account: Account, relieved: readonly Account[]): Counts =>
  relieved.includes(account) ? [0, 1] : [1, 0];
