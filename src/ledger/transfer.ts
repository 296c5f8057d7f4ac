import { type Account, type Counts, tally } from './account.ts';
import type { Move } from './kinds.ts';

/** What a move does to the counts of one account. */
export type Transfer =
  | {
      readonly outcome: 'moved';
      readonly counts: Counts;
      readonly moved: number;
    }
  /** Every piece is already where the move would bring it. */
  | { readonly outcome: 'already'; readonly counts: Counts }
  /** Pieces are in states that the move does not start from; `counts` is what to go on with. */
  | { readonly outcome: 'unfit'; readonly counts: Counts }
  /** More pieces are asked for than there are to move. */
  | {
      readonly outcome: 'too-many';
      readonly counts: Counts;
      readonly available: number;
    }
  /** Thrown-away pieces are put back. */
  | {
      readonly outcome: 'old-back';
      readonly counts: Counts;
      readonly moved: number;
    };

/** Moves `qty` pieces, or all that are left to do when `qty` is undefined. Pure. */
export function transfer(
  account: Account,
  counts: Counts,
  move: Move,
  qty: number | undefined,
): Transfer {
  const available = tally(account, counts, move.from);
  const thrownAway = tally(account, counts, move.needsNew ?? []);
  const wanted = qty ?? (available > 0 ? available : thrownAway);
  if (available >= wanted && wanted > 0) {
    return {
      outcome: 'moved',
      counts: take(account, counts, move.from, move.to, wanted),
      moved: wanted,
    };
  }
  if (thrownAway > 0 && available + thrownAway >= wanted) {
    const states = [...move.from, ...(move.needsNew ?? [])];
    return {
      outcome: 'old-back',
      counts: take(account, counts, states, move.to, wanted),
      moved: wanted,
    };
  }
  if (available > 0) {
    const all = take(account, counts, move.from, move.to, available);
    return { outcome: 'too-many', counts: all, available };
  }
  const there = tally(account, counts, [move.to, ...beyond(move)]);
  if (there === account.size) return { outcome: 'already', counts };
  if (move.idleElsewhere) return { outcome: 'unfit', counts };
  const all = take(account, counts, account.states, move.to, qty ?? account.size);
  return { outcome: 'unfit', counts: all };
}

/** States that a move aims at besides its own end: a tight fastener is also snug, one thrown away is also out. */
function beyond(move: Move): readonly string[] {
  const further: Record<string, readonly string[]> = {
    snug: ['tight'],
    out: ['gone'],
    gone: ['out'],
    loose: ['out', 'gone'],
    open: ['capped'],
    joined: ['made'],
    filled: ['full'],
    'part-drained': ['drained'],
    aside: ['out', 'gone'],
  };
  return further[move.to] ?? [];
}

function take(
  account: Account,
  counts: Counts,
  from: readonly string[],
  to: string,
  wanted: number,
): Counts {
  const next = [...counts];
  let left = wanted;
  for (const state of from) {
    const i = account.states.indexOf(state);
    if (i < 0 || state === to) continue;
    const taken = Math.min(left, next[i] ?? 0);
    next[i] = (next[i] ?? 0) - taken;
    left -= taken;
  }
  const target = account.states.indexOf(to);
  next[target] = (next[target] ?? 0) + (wanted - left);
  return next;
}
