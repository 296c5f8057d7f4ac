import { numberPattern, numberSaid } from '../rules/index.ts';

/** The thing that a command is about: "the four old cover bolts". Offsets in the text that was read. */
export interface NounPhrase {
  /** Of the words without article and number. */
  readonly start: number;
  readonly end: number;
  /** Those words in small letters, each without its plural. */
  readonly stems: readonly string[];
  /** The last word is a plural. */
  readonly isPlural: boolean;
  /** How many the words say. */
  readonly count: number | undefined;
}

/** Nouns are seldom longer; what goes on is something else. */
const mostWords = 5;

/**
 * The noun phrase that a text begins with, with `nouns` on to what it is a part of ("the pump end of the hose"); undefined
 * where it begins with something else, such as "it".
 */
export function nounPhraseOf(
  text: string,
  reach: 'noun' | 'nouns' = 'noun',
): NounPhrase | undefined {
  const lead = leading.exec(text)?.[0] ?? '';
  const number = new RegExp(`\\b${numberPattern}(?=\\s)`, 'i').exec(lead)?.[0];
  const words: { readonly text: string; readonly start: number }[] = [];
  for (const { 0: word, index } of text
    .slice(lead.length)
    .matchAll(/[\p{L}\p{N}][\p{L}\p{N}'’/-]*|\S/gu)) {
    if (!/^[\p{L}\p{N}]/u.test(word)) break;
    const isLinked =
      reach === 'nouns' && words.length > 0 && /^(?:of|the|its|each|both)$/i.test(word);
    const isAdjective = words.length === 0 && adjective.test(word);
    if (follows.test(word) && !isLinked && !isAdjective) break;
    if (words.length > 0 && /^[a-z]{3,}ly$/i.test(word)) break;
    words.push({ text: word, start: lead.length + index });
    if (words.length > (reach === 'noun' ? mostWords : 2 * mostWords)) return undefined;
  }
  const [first, last] = [words[0], words.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  return {
    start: first.start,
    end: last.start + last.text.length,
    stems: words.map((word) => stemOf(word.text)),
    isPlural: stemOf(last.text) !== last.text.toLowerCase(),
    count: number === undefined ? undefined : numberSaid(number),
  };
}

const leading = new RegExp(
  `^\\s*(?:(?:the|an?|all|each|every|any|this|that|these|those|its|their|your|${numberPattern}|of|other|remaining|new|old|used|worn|same|rest)(?=\\s)\\s+)*`,
  'i',
);

/** Words that cannot be a part of a thing's name. */
const follows =
  /^(?:from|to|on|onto|in|into|at|with|without|under|over|above|below|behind|by|for|of|between|through|against|near|off|out|away|back|up|down|home|aside|apart|along|across|around|round|towards?|until|till|so|if|when|while|after|before|and|or|then|as|that|which|where|it|them|they|is|are|has|have|again|only|evenly|fully|tight|loose|shut|open|closed|free|clear|clean|flush|firmly|crosswise|upwards|downwards|sideways|together|first|last|one|both|everything|using|because|unless|per|than|not|the|straight|runs?|flows?|turns|lies|sits?|carr(?:y|ies)|comes?|goes|hangs?|does|do|did)$/i;

/** Before a noun some of these are a part of its name: "down spring", "clean oil". */
const adjective =
  /^(?:down|up|back|over|under|out|in|on|off|open|closed|first|last|clean|loose|tight|turn)$/i;

/** A word without its plural, in small letters. */
export function stemOf(word: string): string {
  const small = word.toLowerCase();
  if (/[^aeiou]ies$/.test(small)) return `${small.slice(0, -3)}y`;
  if (/(?:[sxz]|ch|sh)es$/.test(small)) return small.slice(0, -2);
  return /[^s'’]s$/.test(small) && small.length > 3 ? small.slice(0, -1) : small;
}
