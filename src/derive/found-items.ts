import type { Space, VariantSet } from '../applicability/index.ts';
import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Gathering } from './gather.ts';
import { machinesMeant } from './machines-meant.ts';

/** Where an item of a job is met. */
export interface Found {
  /** The procedure that names it first. */
  readonly one: LinkedProcedure;
  /** The machines that have it and on which it is met. */
  readonly under: VariantSet;
}

/** Items of a job in order of reading. */
export type FoundItems<T extends Item = Item> = ReadonlyMap<T, Found>;

/** An item that a text names, where it holds for fewer machines than the text. */
export interface Named<T extends Item> {
  readonly item: T;
  readonly under: VariantSet;
}

/** The items that the blocks of a job name. */
export function foundItems<T extends Item>(
  space: Space,
  named: (...of: Parameters<NonNullable<Gathering<unknown>['block']>>) => readonly Named<T>[],
): Gathering<FoundItems<T>> {
  const merge = (parts: readonly FoundItems<T>[]): FoundItems<T> => {
    const all = new Map<T, Found>();
    for (const part of parts) {
      for (const [item, { one, under }] of part) {
        const known = all.get(item);
        const found =
          known === undefined ? { one, under } : { ...known, under: space.or(known.under, under) };
        if (under !== space.none) all.set(item, found);
      }
    }
    return all;
  };
  return {
    sum: merge,
    choose: merge,
    block: (block, one, under) => {
      const parts = named(block, one, under).map(
        ({ item, under: own }) =>
          new Map([[item, { one, under: machinesMeant(space, item.when, own) }]]),
      );
      return parts.length === 0 ? undefined : merge(parts);
    },
    performed: (found, _at, under) =>
      merge([
        new Map(
          [...found].map(([item, { one, under: own }]) => [
            item,
            { one, under: space.and(own, under) },
          ]),
        ),
      ]),
  };
}
