import type { Item } from '../catalogue/index.ts';
import type { Action } from '../syntax/index.ts';
import { idWords } from './id-words.ts';

/** Where an entry stands more than once, in words and in the catalogue's order: left, right. None for other entries. */
export function instancesOf(item: Item): readonly string[] {
  return 'each' in item ? (item.each ?? []).map(idWords) : [];
}

/** Those of them that an action means; all where it names none. */
export function instancesMeant(action: Action, item: Item): readonly string[] {
  const all = instancesOf(item);
  if (action.each.length === 0) return all;
  const named = new Set(action.each.map((ref) => idWords(ref.id)));
  return all.filter((instance) => named.has(instance));
}

/** How many pieces an entry stands for at each of its instances. */
export function piecesAtEach(item: Item): number {
  return 'count' in item ? item.count : 1;
}

/** "left", "left and right", "on each: left, right" where more than one piece stands at each. */
export function instanceWords(instances: readonly string[], atEach: number): string {
  if (instances.length > 1 && atEach > 1) return `on each: ${instances.join(', ')}`;
  return instances.length < 2
    ? instances.join('')
    : `${instances.slice(0, -1).join(', ')} and ${instances.at(-1)}`;
}
