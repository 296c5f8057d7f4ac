import type { Catalogue, Item } from '../catalogue/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';

/** Whose entry an item is: a machine's, or one that a procedure brings along for itself. */
export interface Owner {
  readonly kind: 'machine' | 'procedure';
  readonly id: string;
}

/** The machine that a procedure speaks of; the only one where it names none. */
export function machineOf(manual: LinkedManual, one: LinkedProcedure): Catalogue | undefined {
  const { machines } = manual.manual;
  const { machine } = one.procedure.front;
  if (machine !== undefined) return machines.get(machine);
  return machines.size === 1 ? machines.values().next().value : undefined;
}

export function ownerOf(manual: LinkedManual, one: LinkedProcedure, item: Item): Owner {
  const machine = machineOf(manual, one);
  return machine?.items.get(item.id) === item
    ? { kind: 'machine', id: machine.id }
    : { kind: 'procedure', id: one.procedure.id };
}

/** An entry with its owner. */
export interface Owned<T extends Item = Item> {
  readonly item: T;
  readonly owner: Owner;
}

/** Every entry of the manual once: those of machines in order of machine and id, then those of procedures. */
export function allItems(manual: LinkedManual): readonly Owned[] {
  const seen = new Set<Item>();
  const taken = new Set<ReadonlyMap<string, Item>>();
  const found: Owned[] = [];
  const take = (items: ReadonlyMap<string, Item>, owner: Owner): void => {
    if (taken.has(items)) return;
    taken.add(items);
    for (const id of [...items.keys()].sort()) {
      const item = items.get(id);
      if (item === undefined || seen.has(item)) continue;
      seen.add(item);
      found.push({ item, owner });
    }
  };
  for (const id of [...manual.manual.machines.keys()].sort()) {
    const machine = manual.manual.machines.get(id);
    if (machine !== undefined) take(machine.items, { kind: 'machine', id: machine.id });
  }
  for (const one of manual.procedures.values()) {
    take(one.catalogue.items, { kind: 'procedure', id: one.procedure.id });
  }
  return found;
}
