import { type Fastener, type Item, isSingleUse, type Part } from '../catalogue/index.ts';
import type { Action } from '../syntax/index.ts';
import { countOf } from './count-meant.ts';
import { instancesMeant, instancesOf } from './instances.ts';
import { piecesOf } from './item-name.ts';

/** What can be used up and come in new, piece by piece. */
export type Spare = Fastener | Part;

/** Pieces of one item that go to scrap or come in new. */
export interface Tally {
  readonly removed: Pieces;
  readonly discarded: Pieces;
  readonly fitted: Pieces;
}

/** Pieces that actions count out, and how many actions say no count and so mean all that are left. */
interface Pieces {
  readonly counted: number;
  readonly rests: number;
}

const none: Pieces = { counted: 0, rests: 0 };

export const noTally: Tally = { removed: none, discarded: none, fitted: none };

/**
 * What one action uses up: single-use pieces that come out, pieces that are thrown away, or pieces that go
 * in new; undefined for other actions.
 */
export function tallyOf(action: Action, item: Spare): Tally | undefined {
  const pieces = piecesMeant(action, item);
  if (action.verb === 'discard') return { ...noTally, discarded: pieces };
  if (isScrapped(action, item)) return { ...noTally, removed: pieces };
  return isFittedNew(action) ? { ...noTally, fitted: pieces } : undefined;
}

export function addTallies(a: Tally, b: Tally): Tally {
  const sum = (x: Pieces, y: Pieces): Pieces => ({
    counted: x.counted + y.counted,
    rests: x.rests + y.rests,
  });
  return {
    removed: sum(a.removed, b.removed),
    discarded: sum(a.discarded, b.discarded),
    fitted: sum(a.fitted, b.fitted),
  };
}

/** New pieces that a job needs. A piece that is thrown away and put in new counts once. */
export function newPieces({ removed, discarded, fitted }: Tally, item: Spare): number {
  const pieces = piecesOf(item);
  return Math.max(...[removed, discarded, fitted].map((one) => total(one, pieces)));
}

/** Equal for equal tallies. */
export function tallyKey({ removed, discarded, fitted }: Tally): string {
  return [removed, discarded, fitted].map(({ counted, rests }) => `${counted}+${rests}`).join(' ');
}

/** True where an action takes the pieces out for good. */
export function isScrapped(action: Action, item: Item): boolean {
  return action.verb === 'discard' || (action.verb === 'remove' && isSingleUse(item));
}

/** True where an action puts new pieces in. */
export function isFittedNew(action: Action): boolean {
  return action.verb === 'replace' || (action.verb === 'install' && action.isNew);
}

/** A count said of an item with instances is meant for each of them. */
function piecesMeant(action: Action, item: Item): Pieces {
  const isAll = instancesMeant(action, item).length === instancesOf(item).length;
  if (action.qty !== undefined || !isAll) return { counted: countOf(action, item), rests: 0 };
  return { counted: 0, rests: 1 };
}

/** The first "all that are left" fills up what was counted; every further one is a whole set. */
function total({ counted, rests }: Pieces, pieces: number): number {
  return rests === 0 ? counted : (rests - 1) * pieces + Math.max(counted, pieces);
}
