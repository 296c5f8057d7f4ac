import { type Item, nameOf, pluralOf } from '../catalogue/index.ts';
import { instancesOf, piecesAtEach } from './instances.ts';

/** What an entry is called, in the singular or, for a count other than 1, the plural; the count itself is not said. */
export function itemName(item: Item, count = 1): string {
  return count === 1 ? nameOf(item) : pluralOf(item);
}

/** How many pieces an entry stands for: its count at each of its instances. */
export function piecesOf(item: Item): number {
  return piecesAtEach(item) * Math.max(1, instancesOf(item).length);
}

/** Strength as drawings say it: "class 10.9", "grade 5". */
export function strengthOf(item: { class?: string; grade?: string }): string | undefined {
  if (item.class !== undefined) return `class ${item.class}`;
  return item.grade === undefined ? undefined : `grade ${item.grade}`;
}
