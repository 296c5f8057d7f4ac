import { type Catalogue, type Item, nameOf } from '../../catalogue/index.ts';
import { matchAt } from './match-at.ts';
import { onceFor } from './once-for.ts';

/** Where a text names an entry of the catalogue. */
export interface NamedItem {
  readonly item: Item;
  readonly start: number;
  readonly end: number;
}

/** Finds the first entry that a text names: by name, plural, or another noun of theirs. */
export type ItemFinder = (text: string) => NamedItem | undefined;

/** One a catalogue. Of names that begin with the same word, the longest counts. */
export const itemFinder: (catalogue: Catalogue) => ItemFinder = onceFor((catalogue) => {
  const names = namesByFirstWord(catalogue);
  return (text) => {
    for (const { index, 0: first } of text.matchAll(word)) {
      for (const { words, item } of names.get(first.toLowerCase()) ?? []) {
        const end = endOf(words, text, index);
        if (end !== undefined && !isJoined(text, index, end)) return { item, start: index, end };
      }
    }
    return undefined;
  };
});

/** A word with its hyphens, or one sign. */
const word = /[\p{L}\p{N}-]+|\S/gu;

interface Name {
  readonly words: readonly string[];
  readonly item: Item;
}

/** Longest first. The first of two entries with one name has it. */
function namesByFirstWord({ items }: Catalogue): ReadonlyMap<string, readonly Name[]> {
  const known = new Map<string, Item>();
  for (const item of items.values()) {
    for (const name of namesOf(item)) {
      const plain = name.trim().toLowerCase().replace(/\s+/g, ' ');
      if (plain !== '' && !known.has(plain)) known.set(plain, item);
    }
  }
  const byWord = new Map<string, Name[]>();
  const longestFirst = [...known].sort(([a], [b]) => b.length - a.length || (a < b ? -1 : 1));
  for (const [name, item] of longestFirst) {
    const first = name.match(word)?.[0] ?? '';
    const others = byWord.get(first) ?? [];
    others.push({ words: name.split(' '), item });
    byWord.set(first, others);
  }
  return byWord;
}

function namesOf(item: Item): string[] {
  if (item.kind === 'hazard') return [];
  const many = nameOf(item, 2).replace(/^2 /, '');
  return [item.name, many, ...item['also-called'].flatMap((name) => [name, `${name}s`])];
}

const space = /\s+/y;

/** Where words end that stand in a text at a place, with any space between them. */
export function endOf(words: readonly string[], text: string, start: number): number | undefined {
  let at = start;
  for (const [i, one] of words.entries()) {
    if (i > 0) {
      const gap = matchAt(space, text, at);
      if (gap === '') return undefined;
      at += gap.length;
    }
    if (text.slice(at, at + one.length).toLowerCase() !== one) return undefined;
    at += one.length;
  }
  return at;
}

/** Whether a stretch is only a part of longer words. */
const isJoined = (text: string, start: number, end: number): boolean =>
  partOfWord.test(before(text, start)) || partOfWord.test(text.slice(end, end + 2));

const before = (text: string, start: number): string =>
  [...text.slice(Math.max(0, start - 2), start)].at(-1) ?? '';

const partOfWord = /^[\p{L}\p{N}-]/u;
