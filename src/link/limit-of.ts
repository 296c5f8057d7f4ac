import type { Item, Limit } from '../catalogue/index.ts';
import { parseQuantity, type Quantity, sameQuantity } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';

/**
 * The limit of the catalogue that a reading is held against: the one that the action names, else the only one
 * that there is, else the one that says what the action says. Undefined where it cannot be told, and for a
 * plain check, which reads no figure.
 */
export function limitOf(action: Action, item: Item): Limit | undefined {
  const { verb, limit, value } = action;
  if (verb !== 'measure' && verb !== 'check') return undefined;
  if (limit !== undefined) return item.limits.find(({ name }) => name === limit.id);
  if (verb === 'check' && value === undefined) return undefined;
  const [only, ...others] = item.limits;
  if (others.length === 0) return only;
  const said = value && parseQuantity(value.text).value;
  return said && item.limits.find(({ quantity }) => sameQuantity(quantity, said));
}

/** What a reading must give, from the catalogue where it says so, else as the action says. */
export function expectedReading(action: Action, item: Item | undefined): Quantity | undefined {
  const limit = item && limitOf(action, item);
  return limit?.quantity ?? (action.value && parseQuantity(action.value.text).value);
}
