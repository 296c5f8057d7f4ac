import type { Fastener, Item, ItemKind, Part } from './model.ts';

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
    const actions = [
      ['raised-by', item.raisedBy],
      ['first', item.first],
    ] as const;
    return actions.flatMap(([member, list]) =>
      list.map(({ item: id }, i) => ({ id, member, path: `${member}.${i}.item`, kinds: touched })),
    );
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
      return [
        ...many(item.holds, 'holds', ['part']),
        ...many(item.behind, 'behind', obstacles),
        ...fitting(item),
      ];
    case 'part':
      return [...many(item.behind, 'behind', obstacles), ...fitting(item)];
    case 'connection':
      return [
        ...one(item.on, 'on', ['part']),
        ...one(item.circuit, 'circuit', ['circuit']),
        ...many(item.behind, 'behind', obstacles),
        ...many(item.coat, 'coat', ['consumable']),
      ];
    case 'circuit':
      return [
        ...many(item.drain, 'drain', openings),
        ...many(item.fill, 'fill', openings),
        ...many(item['never-with'], 'never-with', ['circuit', 'consumable']),
      ];
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

function fitting(item: Fastener | Part): readonly Reference[] {
  return [
    ...many(item.coat, 'coat', ['consumable']),
    ...many(item['renew-with'], 'renew-with', ['part', 'fastener']),
  ];
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
