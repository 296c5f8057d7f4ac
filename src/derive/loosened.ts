import type { Pattern } from '../../schemas/catalogue.ts';
import type { Fastener } from '../catalogue/index.ts';
import { allActions, type LinkedProcedure } from '../link/index.ts';
import type { Action, When } from '../syntax/index.ts';
import { piecesAtEach } from './instances.ts';
import { patternMeant } from './pattern-meant.ts';

/** Fasteners in a pattern that are loosened together, so that the order matters. */
export interface LoosenedFact {
  readonly item: Fastener;
  readonly pattern: Pattern;
  readonly when: When | undefined;
}

/** What some actions loosen, each item once. Taking out what was loosened before has no order any more. */
export function loosenedFacts(actions: readonly Action[], one: LinkedProcedure): LoosenedFact[] {
  const facts = new Map<string, LoosenedFact>();
  for (const action of actions) {
    const item = one.item(action.item);
    if (item?.kind !== 'fastener' || facts.has(item.id) || !loosens(action, one)) continue;
    const pattern = patternMeant(item, action.qty?.count ?? piecesAtEach(item));
    if (pattern !== undefined) facts.set(item.id, { item, pattern, when: action.when });
  }
  return [...facts.values()];
}

function loosens(action: Action, one: LinkedProcedure): boolean {
  if (action.verb === 'loosen') return true;
  if (action.verb !== 'remove') return false;
  for (const before of allActions(one.procedure)) {
    if (before === action) break;
    if (before.verb === 'loosen' && before.item.id === action.item.id) return false;
  }
  return true;
}
