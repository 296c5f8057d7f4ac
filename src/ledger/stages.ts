import type { StatefulItem } from '../catalogue/index.ts';
import {
  findQuantities,
  kindOf,
  parseQuantity,
  type Quantity,
  sameQuantity,
} from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';

/** True for a `:torque` whose `value=`, or else whose words, say a stage of the item's torque before the last one. */
export function isEarlierStage(action: Action, item: StatefulItem): boolean {
  if (action.verb !== 'torque') return false;
  if (item.kind !== 'fastener' && item.kind !== 'connection') return false;
  const stages = item.torque?.spec.stages ?? [];
  if (stages.length < 2) return false;
  const said = saidIn(action);
  if (said.length === 0) return false;
  const isSaid = stages.map(
    (stage) => stage.does === 'tighten' && said.some((one) => sameQuantity(stage.to, one)),
  );
  return isSaid.includes(true) && !isSaid[isSaid.length - 1];
}

/** Words that tell of more stages than those whose figures they give. */
const further = /\b(?:stages|passes|then|finally)\b/i;

/** The torques that an action gives; none where its words go on to an angle or to further stages. */
function saidIn({ value, words }: Action): readonly Quantity[] {
  if (value !== undefined) {
    const said = parseQuantity(value.text).value;
    return said === undefined ? [] : [said];
  }
  if (further.test(words)) return [];
  const all = findQuantities(words).flatMap(({ quantity }) => quantity ?? []);
  if (all.some((one) => kindOf(one) === 'angle')) return [];
  return all.filter((one) => kindOf(one) === 'torque');
}
