import type { StatefulItem } from '../catalogue/index.ts';
import { canonical, kindOf, parseQuantity, sameQuantity } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';

/** True for a `:fill` whose `amount=` is surely less than the circuit holds. */
export function isPartFill({ verb, amount }: Action, item: StatefulItem): boolean {
  if (verb !== 'fill' || amount === undefined || item.kind !== 'circuit') return false;
  const poured = parseQuantity(amount.text).value;
  if (poured === undefined || kindOf(poured) !== 'volume' || item.capacity === undefined) {
    return false;
  }
  const most = canonical(poured).high;
  const least = canonical(item.capacity).low;
  if (most === undefined || least === undefined) return false;
  return most.value < least.value && !sameQuantity(poured, item.capacity);
}
