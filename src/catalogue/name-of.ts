import type { Item } from './model.ts';

/** What a sheet calls a number of pieces: "anvil bolt" for one, "8 anvil bolts" for more. */
export function nameOf(item: Item, count = 1): string {
  return count === 1 ? singular(item) : `${count} ${pluralOf(item)}`;
}

/** The plural without a number: the entry's own, else by the rules of English. */
export function pluralOf(item: Item): string {
  if ('plural' in item && item.plural !== undefined) return item.plural;
  return pluralName(singular(item));
}

function singular(item: Item): string {
  return item.kind === 'hazard' ? item.hazard : item.name;
}

/** What comes after the noun that takes the plural: "length of hose", "bolt (long)", "plate, rear", "bolt M8". */
const tail =
  /\s*(?:[,(]|\s(?:of|with|for|to|from|in|on|at|under|behind|between|without|and)\s|\s\S*\d).*$/s;

/** "anvil bolt" → "anvil bolts", "length of hose" → "lengths of hose". */
export function pluralName(name: string): string {
  const head = name.replace(tail, '');
  return head === '' ? `${name}s` : pluralWord(head) + name.slice(head.length);
}

const irregular: readonly (readonly [string, string])[] = [
  ['knife', 'knives'],
  ['leaf', 'leaves'],
  ['half', 'halves'],
  ['shelf', 'shelves'],
  ['foot', 'feet'],
  ['tooth', 'teeth'],
];

function pluralWord(text: string): string {
  for (const [one, many] of irregular) {
    if (text.toLowerCase().endsWith(one)) return text.slice(0, -one.length) + many;
  }
  if (/(s|x|z|ch|sh)$/i.test(text)) return `${text}es`;
  if (/[^aeiou]y$/i.test(text)) return `${text.slice(0, -1)}ies`;
  return `${text}s`;
}
