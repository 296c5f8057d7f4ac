import type { Item } from './model.ts';

/** Whether an item is thrown away once it has been taken out. */
export function isSingleUse(item: Item): boolean {
  return (item.kind === 'fastener' || item.kind === 'part') && item['single-use'];
}
