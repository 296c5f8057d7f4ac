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

/** One a catalogue. Of names that begin at one place, the longest counts. */
export const itemFinder: (catalogue: Catalogue) => ItemFinder = onceFor((catalogue) => {
  const names = namesByLetter(catalogue);
  return (text) => {
    for (const { index } of text.matchAll(word)) {
      const named = longestAt(names, text, index);
      if (named !== undefined) return named;
    }
    return undefined;
  };
});

/** A word with its hyphens, or one sign. */
const word = /[\p{L}\p{N}-]+|\S/gu;

/** Names letter by letter, so that many which begin alike are read as one. */
interface Letters {
  readonly next: Map<string, Letters>;
  /** What is named by the letters up to here. */
  item: Item | undefined;
}

/** The first of two entries with one name has it. */
function namesByLetter({ items }: Catalogue): Letters {
  const root: Letters = { next: new Map(), item: undefined };
  for (const item of items.values()) {
    for (const name of namesOf(item)) {
      const plain = name.trim().toLowerCase().replace(/\s+/g, ' ');
      if (plain === '') continue;
      let at = root;
      for (const letter of plain) {
        const next = at.next.get(letter) ?? { next: new Map(), item: undefined };
        at.next.set(letter, next);
        at = next;
      }
      at.item ??= item;
    }
  }
  return root;
}

/** Any space stands for one; a name that is only a part of longer words is none. */
function longestAt(names: Letters, text: string, start: number): NamedItem | undefined {
  let found: NamedItem | undefined;
  let at: Letters | undefined = names;
  for (let end = start; at !== undefined; ) {
    if (at.item !== undefined && !isJoined(text, start, end)) found = { item: at.item, start, end };
    const gap = end > start ? matchAt(space, text, end) : '';
    const letter = gap === '' ? String.fromCodePoint(text.codePointAt(end) ?? 0) : ' ';
    if (gap === '' && end >= text.length) break;
    end += gap === '' ? letter.length : gap.length;
    at = at.next.get(letter.toLowerCase());
  }
  return found;
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
