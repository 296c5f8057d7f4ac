import type { Pattern } from '../../schemas/catalogue.ts';
import { type Item, positionsOf } from '../catalogue/index.ts';

/**
 * The pattern in which pieces of an item stand, where their order matters: three or more, and all of them at once. None
 * where the pattern does not fit the count, which the check tells.
 */
export function patternMeant(item: Item, pieces: number): Pattern | undefined {
  if (item.kind !== 'fastener' || item.pattern === undefined) return undefined;
  const { pattern, count } = item;
  return count >= 3 && pieces === count && positionsOf(pattern) === count ? pattern : undefined;
}
