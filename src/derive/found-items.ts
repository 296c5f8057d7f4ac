import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';

/** Items of a job, each with the procedure that names it first. */
export type FoundItems<T extends Item = Item> = ReadonlyMap<T, LinkedProcedure>;

export function mergeFound<T extends Item>(parts: readonly FoundItems<T>[]): FoundItems<T> {
  const all = new Map<T, LinkedProcedure>();
  for (const part of parts) for (const [item, one] of part) if (!all.has(item)) all.set(item, one);
  return all;
}
