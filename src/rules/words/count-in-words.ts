import type { Item } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import { type CountSaid, countsSaid } from '../reading/counts-said.ts';
import { itemFinder } from '../reading/item-names.ts';
import { actionsWithHistory, piecesMoved } from '../reading/pieces-moved.ts';
import { placedProse } from '../reading/placed-prose.ts';
import { runningTexts } from '../reading/running-text.ts';

import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { declared } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'count-in-words',
  family: 'words',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      const before = new Map(
        [...actionsWithHistory(one, examined.linked)].map((step) => [step.action, step.before]),
      );
      for (const { said, draft } of saidIn(one)) {
        const item = one.item(said.action.item);
        if (item === undefined) continue;
        const moved = piecesMoved(said.action, item, before.get(said.action) ?? []);
        if (!moved.has(said.count)) {
          yield { ...draft, procedure, item: item.id, ...told(said, item) };
        }
      }
    }
  },
};

/** These change nothing, and may look at some of the pieces. */
const still: ReadonlySet<string> = new Set(['apply', 'check', 'measure']);

function* saidIn(
  one: LinkedProcedure,
): Generator<{ readonly said: CountSaid; readonly draft: Pick<Draft, 'place'> }> {
  const find = itemFinder(one.catalogue);
  const itemOf = (action: Action): Item | undefined =>
    still.has(action.verb) ? undefined : one.item(action.item);
  for (const { prose } of placedProse(one)) {
    if (prose.actions.length === 0) continue;
    for (const text of runningTexts(prose, one)) {
      for (const said of countsSaid(text, itemOf, find)) {
        yield { said, draft: { place: text.placeOf(said.start, said.end) } };
      }
    }
  }
}

function told(
  { action, count, words }: CountSaid,
  item: Item,
): Pick<Draft, 'message' | 'data' | 'related' | 'help'> {
  const moves = action.qty?.count ?? ('count' in item ? item.count : 1);
  const by =
    action.qty === undefined ? `the catalogue has ${moves}` : `${code(`qty=${moves}`)} is counted`;
  return {
    message: `“${words}” says ${count}, but ${by}`,
    data: { words, said: count, moves },
    related: [
      action.qty === undefined
        ? declared(item.placeOf('count'), 'the count')
        : related(action.qty.place, 'counted here'),
    ],
    help:
      action.qty === undefined
        ? `Correct the words, or write ${code(`qty=${count}`)} where only so many are meant.`
        : 'Correct the words or the number, whichever is wrong.',
  };
}
