import type { Verb } from '../../schemas/directives.ts';
import type { Circuit, Connection, Fastener, Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { type FoundItems, mergeFound } from './found-items.ts';
import { actionsOf, type Gathering } from './gather.ts';

/** A fastener or connection that has a torque. */
export type Torqued = (Fastener | Connection) & {
  readonly torque: NonNullable<Fastener['torque']>;
};

export function isTorqued(item: Item | undefined): item is Torqued {
  return (item?.kind === 'fastener' || item?.kind === 'connection') && item.torque !== undefined;
}

/** What a job torques or checks at its torque, with the procedure that does it first. */
export const torquedItems: Gathering<FoundItems<Torqued>> = {
  sum: mergeFound,
  choose: mergeFound,
  block: (block, one) => {
    const torqued = actionsOf(block).filter(({ verb }) => verb === 'torque' || verb === 'check');
    const items = torqued.map((action) => one.item(action.item));
    if (block.type === 'torque') items.push(one.item(block.item));
    return found(items.filter(isTorqued), one);
  },
};

const handlingVerbs: readonly Verb[] = ['drain', 'fill', 'bleed'];

/** The circuits that a job drains, fills or bleeds, or shows. */
export const handledCircuits: Gathering<FoundItems<Circuit>> = {
  sum: mergeFound,
  choose: mergeFound,
  block: (block, one) => {
    const handling = actionsOf(block).filter(({ verb }) => handlingVerbs.includes(verb));
    const refs = handling.map((action) => action.item);
    if (block.type === 'fluid') refs.push(block.item);
    const items = refs.map((ref) => one.item(ref));
    return found(
      items.filter((item) => item?.kind === 'circuit'),
      one,
    );
  },
};

function found<T extends Item>(
  items: readonly T[],
  one: LinkedProcedure,
): FoundItems<T> | undefined {
  return items.length === 0 ? undefined : new Map(items.map((item) => [item, one]));
}
