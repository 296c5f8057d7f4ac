import type { Item, ItemKind } from './model.ts';

/** An id that one entry names in a member, and the kinds that may stand there. */
export interface Reference {
  readonly id: string;
  readonly member: string;
  /** For `placeOf`: the member, or the element of its list. */
  readonly path: string;
  readonly kinds: readonly ItemKind[];
}

const obstacles: readonly ItemKind[] = ['part', 'fastener', 'connection', 'aid', 'control'];
const openings: readonly ItemKind[] = ['fastener', 'part', 'connection', 'control'];
const workedOn: readonly ItemKind[] = ['part', 'fastener', 'connection', 'circuit', 'control'];
const touched: readonly ItemKind[] = [...workedOn, 'energy', 'aid', 'tool', 'consumable'];

/** Every id that an entry names. */
export function referencesOf(item: Item): readonly Reference[] {
  if (item.kind === 'hazard') {
    return item.raisedBy.map(({ item: id }, i) => ({
      id,
      member: 'raised-by',
      path: `raised-by.${i}.item`,
      kinds: touched,
    }));
  }
  return [
    ...one(item.in, 'in', ['part']),
    ...many(item.hazards, 'hazards', ['hazard']),
    ...particular(item),
  ];
}

function particular(item: Exclude<Item, { kind: 'hazard' }>): readonly Reference[] {
  switch (item.kind) {
    case 'fastener':
      return [...many(item.holds, 'holds', ['part']), ...many(item.behind, 'behind', obstacles)];
    case 'part':
      return many(item.behind, 'behind', obstacles);
    case 'connection':
      return [
        ...one(item.on, 'on', ['part']),
        ...one(item.circuit, 'circuit', ['circuit']),
        ...many(item.behind, 'behind', obstacles),
      ];
    case 'circuit':
      return [...many(item.drain, 'drain', openings), ...many(item.fill, 'fill', openings)];
    case 'energy':
      return many(item['isolate-before'], 'isolate-before', workedOn);
    case 'aid':
      return many(item.blocks, 'blocks', ['part']);
    case 'control':
    case 'tool':
    case 'consumable':
      return [];
  }
}

function one(
  id: string | undefined,
  member: string,
  kinds: readonly ItemKind[],
): readonly Reference[] {
  return id === undefined ? [] : [{ id, member, path: member, kinds }];
}

function many(
  ids: readonly string[],
  member: string,
  kinds: readonly ItemKind[],
): readonly Reference[] {
  return ids.map((id, i) => ({ id, member, path: `${member}.${i}`, kinds }));
}
