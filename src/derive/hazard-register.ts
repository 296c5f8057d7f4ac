import type { Hazard, Item } from '../catalogue/index.ts';
import { allBlocks, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import { type HazardWords, hazardWords } from './hazards-at-a-glance.ts';
import { allItems, type Owner } from './owner.ts';
import { remembered } from './remembered.ts';

/** A hazard of the manual: an entry of the catalogue, or one that a sheet writes out. */
export interface RegisteredHazard {
  /** Undefined where no entry says it. */
  readonly entry: { readonly item: Hazard; readonly owner: Owner } | undefined;
  /** As the entry says it, else as the first panel does. */
  readonly words: HazardWords;
  /** What `hazardKey` gives for each way in which sheets word it. */
  readonly keys: ReadonlySet<string>;
  /** The sheets whose own text shows it, in order of id. */
  readonly shownIn: readonly LinkedProcedure[];
}

/** The same for hazards that are worded alike. */
export function hazardKey({ signal, hazard, harm }: HazardWords): string {
  return JSON.stringify([signal, hazard.trim(), harm.trim()]);
}

interface Growing {
  readonly entry: RegisteredHazard['entry'];
  readonly words: HazardWords;
  readonly keys: Set<string>;
  readonly shownIn: Set<LinkedProcedure>;
}

/** Every hazard of the manual once: the entries as `allItems` has them, then those that only sheets say, by sheet. */
export function hazardRegister(manual: LinkedManual): readonly RegisteredHazard[] {
  const entries = new Map<Hazard, Growing>();
  const written = new Map<string, Growing>();
  const procedures = [...manual.procedures.values()];
  for (const { item, owner } of allItems(manual)) {
    const [one] = procedures;
    if (item.kind !== 'hazard' || one === undefined) continue;
    const { signal, hazard, harm, avoid } = item;
    const words = { signal, hazard, harm, avoid, blocks: [], one };
    entries.set(item, {
      entry: { item, owner },
      words,
      keys: new Set([hazardKey(words)]),
      shownIn: new Set(),
    });
  }
  for (const one of procedures) {
    for (const { words, key, item } of shownBy(one)) {
      const known =
        (item?.kind === 'hazard' ? entries.get(item) : undefined) ??
        written.get(key) ??
        fresh(words);
      if (known.entry === undefined) written.set(key, known);
      known.keys.add(key);
      known.shownIn.add(one);
    }
  }
  return [...entries.values(), ...written.values()].map((one) => ({
    ...one,
    shownIn: [...one.shownIn],
  }));
}

const fresh = (words: HazardWords): Growing => ({
  entry: undefined,
  words,
  keys: new Set(),
  shownIn: new Set(),
});

interface Panel {
  readonly words: HazardWords;
  readonly key: string;
  readonly item: Item | undefined;
}

/** The panels of a sheet's own text, with the entries that they name. */
const shownBy = remembered((one): readonly Panel[] =>
  [...allBlocks(one.procedure)].flatMap((block): readonly Panel[] => {
    if (block.type !== 'hazard') return [];
    const words = hazardWords(block, one);
    return [{ words, key: hazardKey(words), item: block.of && one.item(block.of) }];
  }),
);
