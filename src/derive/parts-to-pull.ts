import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action } from '../syntax/index.ts';
import { countOf } from './count-meant.ts';
import { actionsOf, type Gathering } from './gather.ts';
import { instancesMeant, instancesOf } from './instances.ts';
import { piecesOf } from './item-name.ts';
import { byName, type Pull } from './pull-lists.ts';

/** Pieces of one item that go to scrap or come in new. */
interface Tally {
  readonly one: LinkedProcedure;
  readonly removed: Pieces;
  readonly discarded: Pieces;
  readonly fitted: Pieces;
}

/** Pieces that actions count out, and how many actions say no count and so mean all that are left. */
interface Pieces {
  readonly counted: number;
  readonly rests: number;
}

type Tallies = ReadonlyMap<Item, Tally>;

/**
 * New parts and fasteners that a job uses up: single-use pieces that come out, pieces that are thrown
 * away, and pieces that go in new. A piece that is thrown away and put in new counts once.
 */
export const partsToPull: Gathering<Tallies> = {
  sum: (parts) => merge(parts, (a, b) => a + b),
  choose: (ways) => merge(ways, Math.max),
  block: (block, one) => {
    const actions = actionsOf(block);
    return actions.length === 0
      ? undefined
      : merge(
          actions.map((a) => tally(a, one)),
          (a, b) => a + b,
        );
  },
};

/** The rows in order of name; the washers and locks that go with a fastener follow it. */
export function partPulls(tallies: Tallies): readonly Pull[] {
  return [...tallies].sort(byName).flatMap(([item, { one, removed, discarded, fitted }]) => {
    const pieces = piecesOf(item);
    const count = Math.max(...[removed, discarded, fitted].map((tally) => total(tally, pieces)));
    return [{ item, one, named: undefined, count }, ...stackPulls(item, one, count)];
  });
}

/** True where an action takes the pieces out for good. */
export function isScrapped(action: Action, item: Item): boolean {
  return action.verb === 'discard' || (action.verb === 'remove' && isSingleUse(item));
}

/** True where an action puts new pieces in. */
export function isFittedNew(action: Action): boolean {
  return action.verb === 'replace' || (action.verb === 'install' && action.isNew);
}

function isSingleUse(item: Item): boolean {
  return (item.kind === 'fastener' || item.kind === 'part') && item['single-use'];
}

function stackPulls(item: Item, one: LinkedProcedure, count: number): Pull[] {
  if (item.kind !== 'fastener') return [];
  const perPiece = new Map<string, number>();
  for (const name of item.stack) perPiece.set(name, (perPiece.get(name) ?? 0) + 1);
  return [...perPiece].map(([named, each]) => ({ item, one, named, count: each * count }));
}

function tally(action: Action, one: LinkedProcedure): Tallies {
  const item = one.item(action.item);
  if (item === undefined || (item.kind !== 'fastener' && item.kind !== 'part')) return new Map();
  const pieces = piecesMeant(action, item);
  const scrapped = isScrapped(action, item);
  if (!scrapped && !isFittedNew(action)) return new Map();
  return new Map([
    [
      item,
      {
        one,
        removed: scrapped && action.verb === 'remove' ? pieces : none,
        discarded: action.verb === 'discard' ? pieces : none,
        fitted: scrapped ? none : pieces,
      },
    ],
  ]);
}

const none: Pieces = { counted: 0, rests: 0 };

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

type Join = (a: number, b: number) => number;

function merge(parts: readonly Tallies[], join: Join): Tallies {
  const all = new Map<Item, Tally>();
  for (const part of parts) {
    for (const [item, tally] of part) {
      const before = all.get(item);
      all.set(item, before === undefined ? tally : joined(before, tally, join));
    }
  }
  return all;
}

function joined(a: Tally, b: Tally, join: Join): Tally {
  const pieces = (x: Pieces, y: Pieces): Pieces => ({
    counted: join(x.counted, y.counted),
    rests: join(x.rests, y.rests),
  });
  return {
    one: a.one,
    removed: pieces(a.removed, b.removed),
    discarded: pieces(a.discarded, b.discarded),
    fitted: pieces(a.fitted, b.fitted),
  };
}
