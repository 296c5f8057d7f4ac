import type { Item, Limit } from '../../catalogue/index.ts';
import { allActions, type LinkedProcedure, limitOf } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** A measurement, or a check that names a value or a limit, with the limit of the catalogue where it can be told. */
export interface LimitedReading {
  readonly action: Action;
  readonly item: Item;
  readonly limit: Limit | undefined;
}

/** Readings of items that have limits in the catalogue, in order of reading. */
export const limitedReadings: (one: LinkedProcedure) => readonly LimitedReading[] = onceFor((one) =>
  [...allActions(one.procedure)].flatMap((action) => {
    const item = one.item(action.item);
    const isReading =
      action.verb === 'measure' ||
      (action.verb === 'check' && (action.value !== undefined || action.limit !== undefined));
    if (!isReading || item === undefined || item.limits.length === 0) return [];
    return [{ action, item, limit: limitOf(action, item) }];
  }),
);
