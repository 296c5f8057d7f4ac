import type { VariantSet } from '../applicability/index.ts';
import { type Account, spread, tally } from './account.ts';
import type { Standing } from './books.ts';
import type { Move } from './kinds.ts';
import type { Act } from './program.ts';
import { awayCount } from './requirements.ts';
import { type Run, subjectOf, type Untold } from './run.ts';
import { type Transfer, transfer } from './transfer.ts';

/** A move that an item's own pieces do not allow as it is said. */
export type Misfit = Exclude<Transfer, { outcome: 'moved' }>;

/** Tells of a move that the account's own pieces do not allow. */
export function tellMisfit(
  run: Run,
  op: Act,
  account: Account,
  move: Move,
  standing: Standing,
  misfit: Misfit,
): void {
  const fact = factOf(run, op, account, move, standing, misfit);
  run.tellAt(op, subjectOf(account), standing.set, fact);
}

function factOf(
  run: Run,
  { action }: Act,
  account: Account,
  move: Move,
  { set, value }: Standing,
  misfit: Misfit,
): Untold {
  const { verb, qty } = action;
  const { item, size } = account;
  const state = spread(account, value);
  const since = run.journal.last(account, set);
  switch (misfit.outcome) {
    case 'too-many': {
      const { available } = misfit;
      const asked = qty?.count ?? size;
      return { kind: 'too-many', verb, asked, available, size, state, since };
    }
    case 'old-back': {
      const singleUse = 'single-use' in item && item['single-use'];
      const count = misfit.moved;
      return { kind: 'old-back', verb, itemKind: item.kind, singleUse, count, since };
    }
    case 'already':
      return { kind: 'already-done', verb, direction: move.direction, state, since };
    case 'unfit':
      return { kind: 'state-unfit', verb, state, from: move.from, since };
  }
}

/** Tells of a new piece in the place of an old one that is neither thrown away nor said to be. */
export function tellOldPiece(
  run: Run,
  op: Act,
  account: Account,
  { set, value }: Standing,
  moved: number,
): void {
  const { verb, isNew } = op.action;
  const count = moved - tally(account, value, ['gone']);
  if (verb !== 'install' || !isNew || count <= 0) return;
  const since = run.journal.last(account, set);
  const told = { verb, itemKind: account.item.kind, count, since };
  run.tellAt(op, subjectOf(account), set, { kind: 'old-unsaid', ...told });
}

/** Tells of a set of fasteners of which only some may be undone at a time. */
export function tellTooManyUndone(
  run: Run,
  op: Act,
  account: Account,
  move: Move,
  under: VariantSet,
): void {
  const { item } = account;
  const most = item.kind === 'fastener' ? item['most-undone'] : undefined;
  if (most === undefined) return;
  const { verb, qty } = op.action;
  for (const { set, value } of run.books.at(account, under)) {
    const { counts } = transfer(account, value, move, qty?.count);
    const undone = awayCount(account, counts);
    if (undone <= Math.max(most, awayCount(account, value))) continue;
    const since = run.journal.last(account, set);
    const told = { verb, undone, most, byPlace: item.placeOf('most-undone'), since };
    run.tellAt(op, subjectOf(account), set, { kind: 'too-many-undone', ...told });
  }
}
