import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action } from '../syntax/index.ts';

/** What an action needs to be at hand: what it uses, and what it fits, applies or itself checks with. */
export function fetchedItems(action: Action, one: LinkedProcedure): readonly Item[] {
  const used = action.with.flatMap((ref) => one.item(ref) ?? []);
  const item = one.item(action.item);
  if (item === undefined) return used;
  const isFetched =
    item.kind === 'aid'
      ? action.verb === 'fit'
      : item.kind === 'tool' || item.kind === 'consumable';
  return isFetched ? [item, ...used] : [...coatsFor(action, item, one), ...used];
}

/** What the catalogue has go on an item before it goes in. */
function coatsFor({ verb }: Action, item: Item, one: LinkedProcedure): readonly Item[] {
  if (!('coat' in item) || !joining.has(verb)) return [];
  return item.coat.flatMap((id) => one.item(id) ?? []);
}

const joining: ReadonlySet<string> = new Set(['install', 'replace', 'connect']);
