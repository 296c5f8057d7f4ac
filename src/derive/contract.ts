import type { States } from '../../schemas/front-matter.ts';
import type { Item } from '../catalogue/index.ts';
import { itemStates } from '../ledger/index.ts';
import type { LinkedProcedure } from '../link/index.ts';

/** True where a procedure starts from, or leaves behind, a machine that is not as it should be: it is part of other work. */
export function isContract(one: LinkedProcedure): boolean {
  const { starts, leaves } = one.procedure.front;
  return !isHome(one, starts) || !isHome(one, leaves);
}

function isHome(one: LinkedProcedure, states: States): boolean {
  return Object.entries(states).every(([id, state]) => {
    const home = homeOf(one.item(id));
    if (typeof state === 'string') return state === home;
    return Object.entries(state).every(([name, count]) => count === 0 || name === home);
  });
}

function homeOf(item: Item | undefined): string | undefined {
  if (item === undefined) return undefined;
  const hasState = item.kind !== 'tool' && item.kind !== 'consumable' && item.kind !== 'hazard';
  return hasState ? itemStates(item)[0] : undefined;
}
