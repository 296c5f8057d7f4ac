import type { Item } from '../catalogue/index.ts';
import { compareText } from '../source/index.ts';
import type { Tie } from './removal-ties.ts';

/** Items that are tied together, few enough for one picture. */
export interface TiedGroup {
  /** The item with the most ties, in all of the pictures of a group; the first of them by id. */
  readonly centre: Item;
  readonly items: readonly Item[];
  readonly ties: readonly Tie[];
  /** Which of how many pictures it is, where all that is tied together is too much for one. */
  readonly part: { readonly number: number; readonly of: number } | undefined;
  /** Ties to items of the other pictures that no picture shows. */
  readonly leftOut: number;
}

/** More items than that are not taken in at a glance. */
const mostInPicture = 40;

/** Of the items with the most ties, so many are tried as the one to part a large group at. */
const mostTried = 24;

/**
 * The ties of a machine in groups that no tie joins, the largest first; an item without ties is in none.
 * What is too large for a picture is parted at one item, which is then in each part; where no item parts
 * it, it is cut in the order of the ids, and the ties across the cut are left out.
 */
export function tiedGroups(ties: readonly Tie[]): readonly TiedGroup[] {
  return components(ties)
    .sort((a, b) => itemsOf(b).size - itemsOf(a).size || compareText(keyOf(a), keyOf(b)))
    .flatMap((group) => {
      const parts = packed(parted(group));
      const shown = parts.reduce((sum, part) => sum + part.length, 0);
      const [centre] = mostTied(group);
      if (centre === undefined) return [];
      return parts.map(
        (part, i): TiedGroup => ({
          centre,
          items: [...itemsOf(part)].sort((a, b) => compareText(a.id, b.id)),
          ties: part,
          part: parts.length === 1 ? undefined : { number: i + 1, of: parts.length },
          leftOut: group.length - shown,
        }),
      );
    });
}

/** Parts of a group, each few enough items, none of them packed together yet. */
function parted(group: readonly Tie[]): readonly (readonly Tie[])[] {
  if (itemsOf(group).size <= mostInPicture) return [group];
  const best = mostTied(group)
    .slice(0, mostTried)
    .map((item) => apart(group, item))
    .filter((parts) => parts.length > 1)
    .map((parts) => ({ parts, largest: Math.max(...parts.map((part) => itemsOf(part).size)) }))
    .sort((a, b) => a.largest - b.largest)[0];
  return best === undefined ? cut(group) : best.parts.flatMap(parted);
}

/** The parts of a group if one item joined them no longer; each keeps its ties to that item. */
function apart(group: readonly Tie[], item: Item): readonly (readonly Tie[])[] {
  const isAtItem = ({ from, to }: Tie): boolean => from === item || to === item;
  const rest = components(group.filter((tie) => !isAtItem(tie)));
  const placed = new Map<Item, Tie[]>();
  const parts = rest.map((part) => [...part]);
  for (const part of parts) for (const one of itemsOf(part)) placed.set(one, part);
  for (const tie of group.filter(isAtItem)) {
    const other = tie.from === item ? tie.to : tie.from;
    const part = placed.get(other);
    if (part !== undefined) part.push(tie);
    else {
      const alone = [tie];
      placed.set(other, alone);
      parts.push(alone);
    }
  }
  return parts;
}

/** So many items at a time, in the order of their ids. */
function cut(group: readonly Tie[]): readonly (readonly Tie[])[] {
  const items = [...itemsOf(group)].sort((a, b) => compareText(a.id, b.id));
  const pageOf = new Map(items.map((item, i) => [item, Math.floor(i / mostInPicture)]));
  const pages = Map.groupBy(
    group.filter(({ from, to }) => pageOf.get(from) === pageOf.get(to)),
    ({ from }) => pageOf.get(from),
  );
  return [...pages.values()];
}

/** Parts put together as far as they fit, in the order of their first ids. */
function packed(parts: readonly (readonly Tie[])[]): readonly (readonly Tie[])[] {
  const pages: Tie[][] = [];
  for (const part of parts.toSorted((a, b) => compareText(keyOf(a), keyOf(b)))) {
    const last = pages.at(-1);
    if (last !== undefined && itemsOf([...last, ...part]).size <= mostInPicture) last.push(...part);
    else pages.push([...part]);
  }
  return pages;
}

function components(ties: readonly Tie[]): (readonly Tie[])[] {
  const groups = new Map<Item, { ties: Tie[] }>();
  const members = new Map<{ ties: Tie[] }, Item[]>();
  for (const tie of ties) {
    const [a, b] = [groups.get(tie.from), groups.get(tie.to)];
    const group = a ?? b ?? { ties: [] };
    group.ties.push(tie);
    const joined = members.get(group) ?? [];
    for (const item of [tie.from, tie.to]) {
      if (groups.get(item) !== undefined) continue;
      groups.set(item, group);
      joined.push(item);
    }
    members.set(group, joined);
    if (a !== undefined && b !== undefined && a !== b) {
      for (const item of members.get(b) ?? []) {
        groups.set(item, a);
        joined.push(item);
      }
      a.ties.push(...b.ties);
      members.delete(b);
    }
  }
  return [...members.keys()].map((group) => group.ties);
}

const itemsOf = (ties: readonly Tie[]): ReadonlySet<Item> =>
  new Set(ties.flatMap(({ from, to }) => [from, to]));

/** Ids of the first tie by the ids of its items. */
function keyOf(ties: readonly Tie[]): string {
  return ties.map(({ from, to }) => `${from.id} ${to.id}`).sort(compareText)[0] ?? '';
}

function mostTied(ties: readonly Tie[]): readonly Item[] {
  const counts = new Map<Item, number>();
  for (const { from, to } of ties)
    for (const item of [from, to]) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts]
    .sort(([a, x], [b, y]) => y - x || compareText(a.id, b.id))
    .map(([item]) => item);
}
