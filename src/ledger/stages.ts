import type { StatefulItem } from '../catalogue/index.ts';
import { parseQuantity, sameQuantity } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';

/** True for a `:torque` whose `value=` is a stage of the item's torque before the last one. */
export function isEarlierStage({ verb, value }: Action, item: StatefulItem): boolean {
  if (verb !== 'torque' || value === undefined) return false;
  if (item.kind !== 'fastener' && item.kind !== 'connection') return false;
  const stages = item.torque?.spec.stages ?? [];
  const said = parseQuantity(value.text).value;
  if (said === undefined) return false;
  const isSaid = stages.map((stage) => stage.does === 'tighten' && sameQuantity(stage.to, said));
  return isSaid.includes(true) && !isSaid[isSaid.length - 1];
}
