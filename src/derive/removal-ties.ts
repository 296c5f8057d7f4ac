import type { Catalogue, Item } from '../catalogue/index.ts';
import { compareText } from '../source/index.ts';

/** What ties two items: `holds` and `behind` as the catalogue says them, `on` and `in` their part and assembly. */
export type TieKind = 'holds' | 'behind' | 'on' | 'in';

/** The first is to be undone before the second can come off; of `in`, the second goes with the first. */
export interface Tie {
  readonly from: Item;
  readonly to: Item;
  readonly kind: TieKind;
}

/**
 * What ties the items of a machine together, each pair once in each direction, by the ids of both. Where a
 * pair is tied in several ways the first of behind, holds, on and in stands for all.
 */
export function removalTies(machine: Catalogue): readonly Tie[] {
  const ties = new Map<string, Tie>();
  const put = (kind: TieKind, from: Item | undefined, to: Item | undefined): void => {
    if (from === undefined || to === undefined || from === to) return;
    const key = `${from.id} ${to.id}`;
    if (!ties.has(key)) ties.set(key, { from, to, kind });
  };
  const items = [...machine.items.values()];
  const named = (id: string | undefined) => (id === undefined ? undefined : machine.items.get(id));
  for (const item of items)
    if ('behind' in item) for (const id of item.behind) put('behind', named(id), item);
  for (const item of items)
    if (item.kind === 'fastener') for (const id of item.holds) put('holds', item, named(id));
  for (const item of items) if (item.kind === 'connection') put('on', item, named(item.on));
  for (const item of items) if (item.kind !== 'hazard') put('in', named(item.in), item);
  return [...ties.values()].sort(
    (a, b) => compareText(a.from.id, b.from.id) || compareText(a.to.id, b.to.id),
  );
}
