import type { Catalogue, ItemKind } from './model.ts';

/** The entries that a procedure may name: those of its machine and its own. */
export function catalogueFor(
  machine: Catalogue | undefined,
  own: Catalogue | undefined,
): Catalogue {
  if (machine === undefined) return own ?? nothing;
  if (own === undefined) return machine;
  return {
    ...machine,
    // The machine's entry counts where a procedure uses its id again.
    items: new Map([...own.items, ...machine.items]),
    faulty: machine.faulty.union(own.faulty),
    isWhole: machine.isWhole && own.isWhole,
  };
}

/** Whether an id is, or may be, that of an entry; only an id for which it is not is unknown. */
export function mayHave(catalogue: Catalogue, id: string): boolean {
  return catalogue.items.has(id) || catalogue.faulty.has(id) || !catalogue.isWhole;
}

/** Ids of the entries of some kinds, in the order of the catalogue. */
export function itemsOfKind(catalogue: Catalogue, kinds: readonly ItemKind[]): readonly string[] {
  return [...catalogue.items.values()]
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ id }) => id);
}

const nothing: Catalogue = {
  id: '',
  name: '',
  note: undefined,
  file: '',
  items: new Map(),
  faulty: new Set(),
  isWhole: true,
};
