import type { Verb } from '../../schemas/directives.ts';
import type { StatefulItem } from '../../src/catalogue/index.ts';
import { isStateful } from '../../src/ledger/precedence.ts';
import { allActions, type LinkedProcedure } from '../../src/link/index.ts';
import type { Action } from '../../src/syntax/index.ts';

const reading: readonly Verb[] = ['check', 'measure', 'apply'];

/** An action that changes the state of an item, and the item. */
export interface Moving {
  readonly action: Action;
  readonly item: StatefulItem;
}

/** The actions of a procedure that change something, in order of reading. */
export function* movingActions(linked: LinkedProcedure): Generator<Moving> {
  for (const action of allActions(linked.procedure)) {
    const item = linked.item(action.item);
    if (item === undefined || !isStateful(item) || reading.includes(action.verb)) continue;
    yield { action, item };
  }
}
