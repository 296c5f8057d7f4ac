import type { Verb } from '../../schemas/directives.ts';
import type { Space, VariantSet } from '../applicability/index.ts';
import type { Circuit, Connection, Fastener, Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Block, Ref } from '../syntax/index.ts';
import { type FoundItems, foundItems, type Named } from './found-items.ts';
import { actionsOf, type Gathering } from './gather.ts';
import { machinesMeant } from './machines-meant.ts';

/** A fastener or connection that has a torque. */
export type Torqued = (Fastener | Connection) & {
  readonly torque: NonNullable<Fastener['torque']>;
};

export function isTorqued(item: Item | undefined): item is Torqued {
  return (item?.kind === 'fastener' || item?.kind === 'connection') && item.torque !== undefined;
}

/** What a job torques or checks at its torque. */
export function torquedItems(space: Space): Gathering<FoundItems<Torqued>> {
  return foundItems(space, (block, one, under) =>
    namedIn(block, ['torque', 'check'], space, one, under).flatMap(({ item, under: own }) =>
      isTorqued(item) ? [{ item, under: own }] : [],
    ),
  );
}

/** The circuits that a job drains, fills or bleeds, or shows. */
export function handledCircuits(space: Space): Gathering<FoundItems<Circuit>> {
  return foundItems(space, (block, one, under) =>
    namedIn(block, ['drain', 'fill', 'bleed'], space, one, under).flatMap(({ item, under: own }) =>
      item.kind === 'circuit' ? [{ item, under: own }] : [],
    ),
  );
}

/** The items of a block's actions with these verbs, and the item that the block itself shows. */
function namedIn(
  block: Block,
  verbs: readonly Verb[],
  space: Space,
  one: LinkedProcedure,
  under: VariantSet,
): readonly Named<Item>[] {
  const meant = (ref: Ref, own: VariantSet): Named<Item>[] => {
    const item = one.item(ref);
    return item === undefined ? [] : [{ item, under: own }];
  };
  const shown = block.type === 'torque' || block.type === 'fluid' ? meant(block.item, under) : [];
  const done = actionsOf(block)
    .filter(({ verb }) => verbs.includes(verb))
    .flatMap((action) => meant(action.item, machinesMeant(space, action.when?.condition, under)));
  return [...done, ...shown];
}
