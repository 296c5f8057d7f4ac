import type { VariantSet } from '../applicability/index.ts';
import { type Account, type Counts, sameCounts } from './account.ts';
import type { Standing } from './books.ts';
import type { Move } from './kinds.ts';
import { tellMisfit, tellOldPiece, tellTooManyUndone } from './misfits.ts';
import { tellObstacles } from './obstacles.ts';
import type { Act } from './program.ts';
import type { Run } from './run.ts';
import { closeOver } from './settle.ts';
import { type Transfer, transfer } from './transfer.ts';

/**
 * Moves pieces of an account, and tells of what does not fit: its own pieces first, then what is in the way.
 * Answers for which variants anything moved.
 */
export function movePieces(run: Run, op: Act, account: Account, move: Move): VariantSet {
  const { space } = run.setting;
  let staying = space.none;
  for (const { set, value, result } of outcomes(run, op, account, move)) {
    if (result.outcome === 'moved') tellOldPiece(run, op, account, { set, value }, result.moved);
    else {
      if (sameCounts(value, result.counts)) staying = space.or(staying, set);
      tellMisfit(run, op, account, move, { set, value }, result);
    }
  }
  const moving = space.minus(op.under, staying);
  if (moving === space.none) return moving;
  tellObstacles(run, op, account, move, moving);
  tellTooManyUndone(run, op, account, move, moving);
  let moved = 0;
  run.books.change(account, moving, (counts) => {
    const next = transfer(account, counts, move, op.action.qty?.count);
    moved = Math.max(moved, piecesMoved(counts, next.counts));
    return next.counts;
  });
  const entry = { account, verb: op.action.verb, under: moving, op };
  run.journal.add({ ...entry, moved: Math.max(1, moved), to: move.to });
  closeOver(run, account, move, moving);
  return moving;
}

interface Outcome extends Standing {
  readonly result: Transfer;
}

/**
 * What becomes of an account. A fastener that nothing has undone is tight already, unless a new one takes its
 * place: to test its torque is a `check`.
 */
function outcomes(
  run: Run,
  { action, under }: Act,
  account: Account,
  move: Move,
): readonly Outcome[] {
  const { space } = run.setting;
  const { kind } = account.item;
  const mayBeIdle = (kind === 'fastener' || kind === 'connection') && action.verb !== 'replace';
  return run.books.at(account, under).flatMap(({ set, value }) => {
    const result = transfer(account, value, move, action.qty?.count);
    const isSame = sameCounts(value, result.counts);
    if (result.outcome === 'moved' && !isSame && !action.isNew) return [{ set, value, result }];
    const touched = run.journal.touched(account, set);
    const idle: Transfer = { outcome: 'already', counts: value };
    const isIdle = result.outcome === 'moved' && isSame && mayBeIdle;
    return [
      { set: space.and(set, touched), value, result },
      { set: space.minus(set, touched), value, result: isIdle ? idle : result },
    ].filter((one) => one.set !== space.none);
  });
}

function piecesMoved(before: Counts, after: Counts): number {
  return after.reduce((sum, n, i) => sum + Math.max(0, n - (before[i] ?? 0)), 0);
}
