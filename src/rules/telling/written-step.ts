import type { LedgerFact } from '../../ledger/index.ts';
import { actionsIn, allBlocks, allSteps } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { sentence } from '../wording/lists.ts';
import { the, thingOf } from '../wording/thing.ts';
import { orderTo } from '../wording/verbs.ts';
import { samePlace } from './related.ts';

/** The words of the step that a `::reverse` writes and in which a fact is told; undefined where it is told elsewhere. */
export function writtenStep(examined: Examined, fact: LedgerFact): string | undefined {
  if (!('verb' in fact) && fact.kind !== 'fill-open') return undefined;
  const verb = 'verb' in fact ? fact.verb : 'fill';
  const { procedure, item, place } = fact;
  const source = examined.linked.procedures.get(procedure)?.procedure;
  const written = examined.expanded.procedures.get(procedure)?.procedure;
  if (source === undefined || written === undefined) return undefined;
  const isReverse = [...allBlocks(source)].some(
    (block) => block.type === 'reverse' && samePlace(block.place, place),
  );
  if (!isReverse) return undefined;
  const actions = [...allSteps(written)]
    .filter((step) => samePlace(step.place, place))
    .map((step) => [...actionsIn(step.blocks)])
    .find((all) => all.some((action) => action.verb === verb && action.item.id === item));
  if (actions === undefined) return undefined;
  return `“${actions.map((action) => wordsOf(examined, procedure, action)).join('. ')}”`;
}

function wordsOf(examined: Examined, procedure: string, { verb, item, qty }: Action): string {
  const thing = thingOf(examined, procedure, item.id);
  return sentence(orderTo(verb, the(thing, qty?.count ?? thing.size)));
}
