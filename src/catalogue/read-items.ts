import type { ItemsInput } from '../../schemas/catalogue.ts';
import { comparePlaces } from '../source/index.ts';
import type { CatalogueFact } from './facts.ts';
import type { Item } from './model.ts';
import { readItem } from './read-item.ts';
import { Reading, type Written } from './reading.ts';
import type { ItemGroup, ItemsContext, WrittenItem } from './written-item.ts';

/** The entries in the order of the file. Of two with one id the first counts, and the other is told. */
export function readItems(
  input: ItemsInput,
  written: Written,
  context: ItemsContext,
): { value: ReadonlyMap<string, Item>; facts: readonly CatalogueFact[] } {
  const reading = new Reading(written);
  const items = new Map<string, Item>();
  for (const entry of inOrder(input, written, context.prefix)) {
    const first = items.get(entry.id) ?? context.taken.get(entry.id);
    if (first !== undefined) {
      const { id, place } = entry;
      reading.facts.push({ kind: 'duplicate-id', id, place, first: first.place, what: first.kind });
      continue;
    }
    items.set(entry.id, readItem(entry, reading, context));
  }
  return { value: items, facts: reading.facts };
}

function inOrder(input: ItemsInput, written: Written, prefix: string): readonly WrittenItem[] {
  const of = <G extends ItemGroup>(
    group: G,
    entries: Readonly<Record<string, ItemsInput[G][string]>>,
  ) =>
    Object.entries(entries).map(([id, data]) => {
      const path = `${prefix === '' ? '' : `${prefix}.`}${group}.${id}`;
      return { group, id, data, path, place: written.keyPlaceOf(path) };
    });
  return [
    ...of('fasteners', input.fasteners),
    ...of('parts', input.parts),
    ...of('connections', input.connections),
    ...of('circuits', input.circuits),
    ...of('energy', input.energy),
    ...of('controls', input.controls),
    ...of('aids', input.aids),
    ...of('tools', input.tools),
    ...of('consumables', input.consumables),
    ...of('hazards', input.hazards),
  ].sort((a, b) => comparePlaces(a.place, b.place));
}
