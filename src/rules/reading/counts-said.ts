import type { Item } from '../../catalogue/index.ts';
import type { Action } from '../../syntax/index.ts';
import {
  afterOne,
  everyOne,
  namedByNumber,
  noAdjective,
  numberPattern,
  numberSaid,
  sharing,
} from '../wording/number-words.ts';
import { countedAt } from './counted-noun.ts';
import type { ItemFinder } from './item-names.ts';
import { allNounsOf, anyNoun, nounsOf } from './item-nouns.ts';
import { matchAt } from './match-at.ts';
import { onceFor } from './once-for.ts';
import type { RunningText, Stretch } from './running-text.ts';
import { longestSentence } from './sentences.ts';

/** "the six bolts": how many pieces of its item the words of an action speak of. Offsets in the running text. */
export interface CountSaid {
  readonly action: Action;
  readonly count: number;
  readonly words: string;
  readonly start: number;
  readonly end: number;
}

/** The counts that stand with the actions of a text; at most one an action, where it is beyond doubt. */
export function countsSaid(
  text: RunningText,
  itemOf: (action: Action) => Item | undefined,
  find: ItemFinder,
): CountSaid[] {
  if (text.text.search(numbers) < 0) return [];
  return text.stretches.flatMap((stretch) => {
    const { action } = stretch;
    const item = action && itemOf(action);
    if (action === undefined || item === undefined) return [];
    const clause = clauseAround(text, stretch);
    if (clause.end - clause.start > longestSentence || isShared(text.text, clause)) return [];
    const found = phrasesIn(text.text, clause, item, find).filter(
      ({ noun }) => isIn(noun, stretch) || isLooselyWith(text, noun, stretch, clause, item),
    );
    const [only] = found;
    return only === undefined || found.length > 1 ? [] : [{ action, ...only }];
  });
}

interface Span {
  readonly start: number;
  readonly end: number;
}

const isIn = (offset: number, { start, end }: Span): boolean => offset >= start && offset < end;

/** The label and what belongs to it on either side, up to a sign or a joining word. */
function clauseAround({ text }: RunningText, { start, end }: Stretch): Span {
  const before = text.slice(Math.max(0, start - longestSentence), start);
  const after = text.slice(end, end + longestSentence);
  const ends = [...before.matchAll(/[.,;:!?()]|\s(?:and|then|or)\s/gi)].at(-1);
  const begins = after.search(/[.,;:!?()]|\s(?:and|then|or)\s/i);
  return {
    start: ends === undefined ? start - before.length : start - before.length + ends.index + 1,
    end: begins < 0 ? end + after.length : end + begins,
  };
}

function isShared(text: string, { start, end }: Span): boolean {
  return sharing.test(text.slice(start, end).replace(everyOne, ''));
}

/** Outside a label, only where the label names nothing itself and is the only one in the clause. */
function isLooselyWith(
  { text, stretches }: RunningText,
  noun: number,
  { start, end }: Stretch,
  clause: Span,
  item: Item,
): boolean {
  const others = stretches.filter(
    (one) => one.action !== undefined && one.start < clause.end && one.end > clause.start,
  );
  if (others.length > 1 || stretches.some((one) => isIn(noun, one))) return false;
  return !itsNoun(item).test(text.slice(start, end));
}

type Phrase = Omit<CountSaid, 'action'> & { readonly noun: number };

/** A number, "of the" and at most two adjectives, and a noun of the item. */
function phrasesIn(text: string, clause: Span, item: Item, find: ItemFinder): Phrase[] {
  const words = text.slice(clause.start, clause.end);
  const { one, many, shortMany } = nounsOf(item);
  const phrases: Phrase[] = [];
  let past = 0;
  for (const { index, 0: number } of words.matchAll(numbers)) {
    if (index < past || joined.test(words.slice(Math.max(0, index - 1), index))) continue;
    const part = matchAt(shareOf, words, index + number.length);
    const from = index + number.length + part.length;
    const counted = countedAt(words, from, item);
    if (counted === undefined) continue;
    past = counted.end;
    const { adjectives, noun } = counted;
    const count = numberSaid(number);
    if (count === undefined || namedByNumber.test(words.slice(0, index))) continue;
    if (!adjectives.every(isAdjective)) continue;
    const isPlural = holds([...many, ...shortMany], noun);
    if (count > 1 || part !== '' ? !isPlural : !afterOne.test(words.slice(past))) continue;
    // "Two cover bolts" in a label about anvil bolts speaks of other bolts.
    const named = find([...adjectives, noun].join(' '));
    if (named !== undefined && named.item !== item && !holds([...one, ...many], noun)) continue;
    const start = clause.start + index;
    const end = clause.start + past;
    const said = text.slice(start, end).replace(/\s+/g, ' ');
    phrases.push({ count, words: said, start, end, noun: end - noun.length });
  }
  return phrases;
}

const numbers = new RegExp(`\\b${numberPattern}(?=\\s)`, 'gi');
const shareOf = new RegExp(
  `\\s+of(?:\\s+(?:the|these|those|its|their))?(?:\\s+${numberPattern}(?=\\s))?(?=\\s)`,
  'iy',
);
/** Before a number these make it a part of something else: "M8", "1.5". */
const joined = /[\p{L}\p{N}.,/·×-]/u;

const itsNoun = onceFor((item: Item) => new RegExp(`\\b${anyNoun(allNounsOf(item))}\\b`, 'i'));

const isAdjective = (word: string): boolean => !noAdjective.test(word) && !/[^s]s$/i.test(word);

const holds = (nouns: readonly string[], words: string): boolean => {
  const plain = words.toLowerCase().replace(/\s+/g, ' ');
  return nouns.some((noun) => noun.toLowerCase() === plain);
};
