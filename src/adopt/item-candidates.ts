import type { Verb } from '../../schemas/directives.ts';
import { type Catalogue, type Item, nameOf } from '../catalogue/index.ts';
import { verbsFor } from '../ledger/index.ts';
import { onceFor } from '../rules/index.ts';
import { nearest } from '../source/index.ts';
import { type NounPhrase, nounPhraseOf, stemOf } from './noun-phrase.ts';

/** Which entries a noun may mean. */
export interface Candidates {
  /** By name, or by a part of it that ends in the same word: "the bolts". Several are in order of the catalogue. */
  readonly fits: readonly Item[];
  /** How many words of the phrase a whole name takes up; 0 where it is only a part of a name. */
  readonly matched: number;
  /** Where none fits: the entry that is spelled most alike. */
  readonly near: Item | undefined;
}

/** What a text begins with, and which entries that may mean: "the pump end of the hose", or only "the pump end". */
export function meantBy(
  text: string,
  catalogue: Catalogue,
  verbs: readonly Verb[],
): { readonly phrase: NounPhrase; readonly candidates: Candidates } | undefined {
  const long = nounPhraseOf(text, 'nouns');
  const found = long && candidatesFor(long, catalogue, verbs);
  const tail = long === undefined ? 0 : long.stems.length - long.stems.indexOf('of');
  if (long?.stems.includes('of') && found?.fits.length === 1 && found.matched > tail)
    return { phrase: long, candidates: found };
  const phrase = nounPhraseOf(text);
  return phrase && { phrase, candidates: candidatesFor(phrase, catalogue, verbs) };
}

/** The entries that a noun may mean, of those to which one of the verbs can be done. */
export function candidatesFor(
  { stems }: NounPhrase,
  { items }: Catalogue,
  verbs: readonly Verb[],
): Candidates {
  const able = [...items.values()].filter(
    ({ kind }) => kind !== 'hazard' && verbsFor(kind).some((verb) => verbs.includes(verb)),
  );
  const named = able.map((item) => ({ item, names: namesOf(item) }));
  const whole = named.map(({ item, names }) => ({
    item,
    words: Math.max(0, ...names.map((name) => (endsIn(stems, name) ? name.length : 0))),
  }));
  const most = Math.max(0, ...whole.map(({ words }) => words));
  if (most > 0) {
    return {
      fits: whole.filter(({ words }) => words === most).map(({ item }) => item),
      matched: most,
      near: undefined,
    };
  }
  const short = named.filter(({ names }) => names.some((name) => isShortFor(stems, name)));
  if (short.length > 0) return { fits: short.map(({ item }) => item), matched: 0, near: undefined };
  const byName = new Map(
    named.flatMap(({ item, names }) => names.map((name) => [name.join(' '), item] as const)),
  );
  const near = nearest(stems.join(' '), byName.keys());
  return { fits: [], matched: 0, near: near === undefined ? undefined : byName.get(near) };
}

/** Each name of an entry, word by word and without plurals. */
const namesOf = onceFor((item: Item): readonly (readonly string[])[] => {
  if (item.kind === 'hazard') return [];
  const many = nameOf(item, 2).replace(/^2 /, '');
  return [item.name, many, ...item['also-called']].map((name) =>
    [...name.matchAll(/[\p{L}\p{N}][\p{L}\p{N}'’/-]*/gu)].map(([word]) => stemOf(word)),
  );
});

/** "sharp blade b" ends in "blade b". */
const endsIn = (stems: readonly string[], name: readonly string[]): boolean =>
  name.length > 0 &&
  name.length <= stems.length &&
  name.every((word, i) => stems[stems.length - name.length + i] === word);

/** "hood bolt" is short for "drum hood bolt": the same last word, and no word that the name has not. */
const isShortFor = (stems: readonly string[], name: readonly string[]): boolean =>
  stems.length < name.length &&
  stems.at(-1) === name.at(-1) &&
  stems.every((word) => name.includes(word));
