import { type Catalogue, type Item, nameOf } from '../../catalogue/index.ts';

/** Where a text names an entry of the catalogue. */
export interface NamedItem {
  readonly item: Item;
  readonly start: number;
  readonly end: number;
}

/** Finds the entries that a text names: by name, plural, or another noun of theirs. */
export function itemFinder(catalogue: Catalogue): (text: string) => NamedItem | undefined {
  const names = new Map<string, Item>();
  for (const item of catalogue.items.values()) {
    for (const name of namesOf(item)) {
      const plain = name.toLowerCase();
      if (!names.has(plain)) names.set(plain, item);
    }
  }
  const longestFirst = [...names.keys()].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  if (longestFirst.length === 0) return () => undefined;
  const pattern = new RegExp(
    `(?<![\\p{L}\\p{N}-])(?:${longestFirst.map(escaped).join('|')})(?![\\p{L}\\p{N}-])`,
    'iu',
  );
  return (text) => {
    const found = pattern.exec(text);
    const item =
      found === null ? undefined : names.get(found[0].toLowerCase().replace(/\s+/g, ' '));
    if (found === null || item === undefined) return undefined;
    return { item, start: found.index, end: found.index + found[0].length };
  };
}

function namesOf(item: Item): string[] {
  if (item.kind === 'hazard') return [];
  const many = nameOf(item, 2).replace(/^2 /, '');
  return [item.name, many, ...item['also-called'].flatMap((name) => [name, `${name}s`])];
}

const escaped = (text: string): string =>
  text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
