import type { ActionData } from '../../schemas/procedure-parts.ts';
import type { Item, ItemKind } from '../catalogue/index.ts';
import { countOf, instancesMeant, isTorqued } from '../derive/index.ts';
import { expectedReading } from '../link/index.ts';
import { parseTorqueSpec, type UnitPolicy } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import { caseData } from './case-data.ts';
import { fluidData, itemData, torqueData, valueData } from './item-data.ts';
import type { SheetContext } from './sheet-context.ts';

/** An action for programs, with the figures that the catalogue has for it. */
export function actionData(action: Action, { one, manual, policy }: SheetContext): ActionData {
  const item = one.item(action.item);
  const words = action.words.replace(/\s+/g, ' ').trim();
  const instances = item === undefined ? [] : instancesMeant(action, item);
  const when = caseData([action.when], manual);
  return {
    verb: action.verb,
    item: itemData(action.item, one),
    ...(words === '' ? {} : { words }),
    ...count(action, item),
    ...(instances.length === 0 ? {} : { instances: [...instances] }),
    ...(action.isNew ? { new: true } : {}),
    ...(action.to === undefined ? {} : { to: action.to.id }),
    ...figures(action, item, policy),
    ...(action.with.length === 0 ? {} : { with: action.with.map((ref) => itemData(ref, one)) }),
    ...(when === undefined ? {} : { when }),
  };
}

const counted: ReadonlySet<ItemKind> = new Set(['fastener', 'part', 'connection', 'aid']);

function count(action: Action, item: Item | undefined): Pick<ActionData, 'count'> {
  if (item !== undefined && counted.has(item.kind)) return { count: countOf(action, item) };
  return action.qty === undefined ? {} : { count: action.qty.count };
}

function figures(
  action: Action,
  item: Item | undefined,
  policy: UnitPolicy,
): Pick<ActionData, 'torque' | 'fluid' | 'limit'> {
  const { verb, value, amount } = action;
  if (verb === 'measure' || verb === 'check') {
    const limit = expectedReading(action, item);
    return limit === undefined ? {} : { limit: valueData(limit, policy) };
  }
  if (verb === 'torque') {
    if (isTorqued(item))
      return { torque: torqueData(item.torque.spec, policy, item.torque.threads) };
    const said = value && parseTorqueSpec(value.text).value;
    return said === undefined ? {} : { torque: torqueData(said, policy) };
  }
  const isPoured = verb === 'drain' || verb === 'fill';
  return isPoured && item?.kind === 'circuit'
    ? { fluid: fluidData(item, policy, amount?.text) }
    : {};
}
