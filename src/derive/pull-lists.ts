import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Action, Ref } from '../syntax/index.ts';
import { type FoundItems, mergeFound } from './found-items.ts';
import { actionsOf, type Gathering } from './gather.ts';
import { itemName, piecesOf } from './item-name.ts';

/** Something to fetch before work starts, with the procedure that asks for it first. */
export interface Pull {
  readonly item: Item;
  readonly one: LinkedProcedure;
  /** What is fetched, where it is not the item itself: a washer of its stack. */
  readonly named: string | undefined;
  readonly count: number | undefined;
}

/** Tools that the front matter, a step or an action names, and aids that are fitted. */
export const toolsToPull = itemsOf(['tool', 'aid']);

/** Consumables that the front matter, a step or an action names, or that are applied. */
export const consumablesToPull = itemsOf(['consumable', 'circuit']);

/** Items in order of name, with the count of those that come in more than one piece. */
export function pullsOf(found: FoundItems): readonly Pull[] {
  return [...found].sort(byName).map(([item, one]) => {
    const pieces = piecesOf(item);
    return { item, one, named: undefined, count: pieces > 1 ? pieces : undefined };
  });
}

function itemsOf(kinds: readonly Item['kind'][]): Gathering<FoundItems> {
  const isListed = (item: Item): boolean => kinds.includes(item.kind);
  const keep = (one: LinkedProcedure, items: readonly Item[]): FoundItems =>
    new Map(items.filter(isListed).map((item) => [item, one]));
  const find = (one: LinkedProcedure, refs: readonly (Ref | string)[]): FoundItems =>
    keep(
      one,
      refs.flatMap((ref) => one.item(ref) ?? []),
    );
  return {
    sum: mergeFound,
    choose: mergeFound,
    front: (one) => find(one, [...one.procedure.front.tools, ...one.procedure.front.consumables]),
    step: (step, one) => find(one, [...step.tools, ...step.consumables]),
    block: (block, one) => {
      const actions = actionsOf(block);
      return actions.length === 0
        ? undefined
        : keep(
            one,
            actions.flatMap((action) => fetchedItems(action, one)),
          );
    },
  };
}

/** What an action needs to be at hand: what it uses, and what it fits, applies or itself checks with. */
export function fetchedItems(action: Action, one: LinkedProcedure): readonly Item[] {
  const used = action.with.flatMap((ref) => one.item(ref) ?? []);
  const item = one.item(action.item);
  if (item === undefined) return used;
  const isFetched =
    item.kind === 'aid'
      ? action.verb === 'fit'
      : item.kind === 'tool' || item.kind === 'consumable';
  return isFetched ? [item, ...used] : used;
}

export function byName([a]: readonly [Item, unknown], [b]: readonly [Item, unknown]): number {
  return compareText(itemName(a), itemName(b)) || compareText(a.id, b.id);
}
