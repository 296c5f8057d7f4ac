import { type Item, nameOf, pluralName, pluralOf } from '../../catalogue/index.ts';
import { onceFor } from './once-for.ts';

/** The nouns that mean an entry: whole names and, apart from them, only their main word ("bolt"). */
export interface ItemNouns {
  readonly one: readonly string[];
  readonly many: readonly string[];
  readonly shortOne: readonly string[];
  readonly shortMany: readonly string[];
}

export const nounsOf: (item: Item) => ItemNouns = onceFor((item) => {
  const others = item.kind === 'hazard' ? [] : item['also-called'];
  const pairs = [
    [nameOf(item), pluralOf(item)] as const,
    ...others.map((name) => [name, pluralName(name)] as const),
  ];
  const heads = pairs.flatMap(([one, many]) => headOf(one, many));
  return {
    one: pairs.map(([one]) => one),
    many: pairs.map(([, many]) => many),
    shortOne: heads.map(([one]) => one),
    shortMany: heads.map(([, many]) => many),
  };
});

export function allNounsOf(item: Item): readonly string[] {
  const { one, many, shortOne, shortMany } = nounsOf(item);
  return [...one, ...many, ...shortOne, ...shortMany];
}

/** The one word that the plural changes. */
function headOf(one: string, many: string): (readonly [string, string])[] {
  const singular = one.split(/\s+/);
  const plural = many.split(/\s+/);
  if (singular.length !== plural.length || singular.length < 2) return [];
  const changed = singular.flatMap((word, i) => {
    const other = plural[i];
    return other === undefined || other === word ? [] : [[word, other] as const];
  });
  return changed.length === 1 ? changed : [];
}

/** Nouns as the source of a regular expression; longest first. Matches nothing where there are none. */
export function anyNoun(nouns: readonly string[]): string {
  const sorted = [...new Set(nouns)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return sorted.length === 0 ? '(?!)' : `(?:${sorted.map(escaped).join('|')})`;
}

const escaped = (text: string): string =>
  text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
