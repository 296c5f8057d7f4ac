import { type Item, nameOf } from '../../catalogue/index.ts';
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
  if (one.size <= 1) return `${the(one, 1)} is`;
  if (count < one.size)
    return `${count} of ${counted(one, one.size)} ${count === 1 ? 'is' : 'are'}`;
  return `all ${counted(one, one.size)} are`;
}

/** "the anvil is", "the 8 anvil bolts are" */
export function theyAre(one: Thing): string {
  return `${the(one)} ${one.size === 1 ? 'is' : 'are'}`;
}

export const them = (count: number): string => (count === 1 ? 'it' : 'them');
