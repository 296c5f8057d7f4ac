import type { Item } from '../../catalogue/index.ts';
import { endOf } from './item-names.ts';
import { allNounsOf } from './item-nouns.ts';
import { matchAt } from './match-at.ts';
import { onceFor } from './once-for.ts';

/** A noun of an item, with the words between it and the number. */
export interface Counted {
  readonly adjectives: readonly string[];
  readonly noun: string;
  readonly end: number;
}

/** At most two words and then a noun of the item. */
export function countedAt(text: string, start: number, item: Item): Counted | undefined {
  const adjectives: string[] = [];
  let at = start;
  while (adjectives.length <= 2) {
    const from = at + matchAt(space, text, at).length;
    for (const words of nounWords(item)) {
      const end = from === at ? undefined : endOf(words, text, from);
      if (end !== undefined && !joinedAfter.test(text.slice(end, end + 2)))
        return { adjectives, noun: text.slice(from, end), end };
    }
    const adjective = matchAt(word, text, from);
    if (from === at || adjective === '') return undefined;
    adjectives.push(adjective);
    at = from + adjective.length;
  }
  return undefined;
}

const space = /\s+/y;
const word = /\p{L}[\p{L}-]*/uy;
const joinedAfter = /^[\p{L}\p{N}-]/u;

/** The nouns of an item word by word, longest first. */
const nounWords = onceFor((item: Item) =>
  [...new Set(allNounsOf(item).map((noun) => noun.trim().toLowerCase()))]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((noun) => noun.split(/\s+/)),
);
