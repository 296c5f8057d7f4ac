import { type Item, nameOf, pluralOf } from '../../catalogue/index.ts';
import type { Examined } from '../rule.ts';
import { code } from './lists.ts';

/** A catalogue entry to be spoken of; an id that means nothing is spoken of as written. */
export interface Thing {
  readonly id: string;
  readonly item: Item | undefined;
  /** How many pieces it has. */
  readonly size: number;
}

export function thingOf(examined: Examined, procedure: string, id: string): Thing {
  return thing(id, examined.linked.procedures.get(procedure)?.item(id));
}

export function thing(id: string, item: Item | undefined): Thing {
  return { id, item, size: item !== undefined && 'count' in item ? item.count : 1 };
}

/** "anvil bolt" for one, "8 anvil bolts" for more. */
export function counted({ id, item }: Thing, count: number): string {
  if (item === undefined) return count === 1 ? code(id) : `${count} of ${code(id)}`;
  return nameOf(item, count);
}

/** "the anvil", "the 8 anvil bolts" */
export function the(one: Thing, count: number = one.size): string {
  return `the ${counted(one, count)}`;
}

/** "the anvil is", "both hinge pins are", "all 8 anvil bolts are", "4 of 8 anvil bolts are" */
export function someAre(one: Thing, count: number): string {
  if (one.size <= 1) return theyAre(one);
  if (count < one.size)
    return `${count} of ${counted(one, one.size)} ${count === 1 ? 'is' : 'are'}`;
  return one.size === 2 && one.item !== undefined
    ? `both ${pluralOf(one.item)} are`
    : `all ${counted(one, one.size)} are`;
}

/** "the anvil is", "the 8 anvil bolts are", "the brake pads are" */
export function theyAre(one: Thing): string {
  return `${the(one)} ${are(one)}`;
}

/** Whether a number of its pieces takes "are": more than one, or one that bears a plural name ("brake pads"). */
export function isMany({ item }: Thing, count: number): boolean {
  return count !== 1 || (item !== undefined && hasPluralName(item));
}

export const are = (one: Thing, count: number = one.size): string =>
  isMany(one, count) ? 'are' : 'is';

export const them = (one: Thing, count: number = one.size): string =>
  isMany(one, count) ? 'them' : 'it';

/** "it is", "they are" */
export const itIs = (one: Thing, count: number = one.size): string =>
  isMany(one, count) ? 'they are' : 'it is';

/** The entry's own plural is its name, or the noun ends as plurals do and not as "gas", "lens" or "chassis". */
function hasPluralName(item: Item): boolean {
  if (item.kind === 'hazard') return false;
  if ('plural' in item && item.plural !== undefined) return item.plural === item.name;
  const noun = item.name.replace(/\s*(?:[,(]|\s(?:of|with|for|to|from|in|on|at)\s).*$/s, '');
  return /[^saiu]s$/i.test(noun) && !/(?:lens|series)$/i.test(noun);
}
