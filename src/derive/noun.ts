import type { Item } from '../catalogue/index.ts';
import type { Action } from '../syntax/index.ts';
import { instancesMeant, instanceWords, piecesAtEach } from './instances.ts';
import { itemName } from './item-name.ts';

/** Words for the item of an action, in three pieces so that the name can be a link: "the 8 ", "anvil bolts", " (M12)". */
export interface Noun {
  readonly before: string;
  readonly name: string;
  readonly after: string;
}

export function nounOf(item: Item, action: Action): Noun {
  const instances = instancesMeant(action, item);
  const atEach = piecesAtEach(item);
  const all = atEach === 1 ? Math.max(1, instances.length) : atEach;
  const asked = atEach === 1 ? all : Math.min(all, action.qty?.count ?? all);
  return {
    before: `${article(action, item, asked, all)} `,
    name: itemName(item, all),
    after: details(item, instances),
  };
}

function article(action: Action, item: Item, asked: number, all: number): string {
  if (action.isNew) return asked === 1 ? 'a new' : `${asked} new`;
  if (all === 1 || item.kind === 'circuit') return 'the';
  return asked < all ? `${asked} of the ${all}` : `the ${all}`;
}

function details(item: Item, instances: readonly string[]): string {
  const thread = item.kind === 'fastener' ? item.thread : undefined;
  const told = [thread, instanceWords(instances, piecesAtEach(item))].filter(Boolean);
  return told.length === 0 ? '' : ` (${told.join(instances.length > 1 ? '; ' : ', ')})`;
}
