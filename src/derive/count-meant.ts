import type { Item } from '../catalogue/index.ts';
import type { Action } from '../syntax/index.ts';
import { instancesMeant, piecesAtEach } from './instances.ts';

/** How many pieces an action means, at all instances that it names together. */
export function countOf(action: Action, item: Item): number {
  const atEach = piecesAtEach(item);
  const instances = Math.max(1, instancesMeant(action, item).length);
  return Math.min(atEach, action.qty?.count ?? atEach) * instances;
}
