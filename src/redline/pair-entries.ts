import { type Item, nameOf } from '../catalogue/index.ts';
import { compareText } from '../source/index.ts';
import { entryMembers } from './entry-members.ts';
import { onOneLine } from './plain-words.ts';
import { torqueText } from './torque-shifts.ts';

/** What stands on both sides, what is gone and what is new. */
export interface Pairing<T> {
  readonly pairs: readonly (readonly [before: T, after: T])[];
  readonly gone: readonly T[];
  readonly fresh: readonly T[];
}

/**
 * Pairs entries by id. Of the others one that has the kind and name of exactly one new entry, or says all that it
 * says, has got another id.
 */
export function pairEntries(
  before: ReadonlyMap<string, Item>,
  after: ReadonlyMap<string, Item>,
): Pairing<Item> {
  const same = [...before.values()].flatMap((one) => {
    const other = after.get(one.id);
    return other === undefined ? [] : [[one, other] as const];
  });
  const named = pairUnique(
    [...before.values()].filter(({ id }) => !after.has(id)),
    [...after.values()].filter(({ id }) => !before.has(id)),
    (item) => `${item.kind} ${onOneLine(nameOf(item)).toLowerCase()}`,
  );
  const isTelling = (item: Item): boolean => membersOf(item).length >= leastMembers;
  const alike = pairUnique(named.gone.filter(isTelling), named.fresh.filter(isTelling), (item) =>
    JSON.stringify([item.kind, ...membersOf(item)]),
  );
  const pairs = [...same, ...named.pairs, ...alike.pairs];
  const [old, now] = [new Set(pairs.map(([one]) => one)), new Set(pairs.map(([, one]) => one))];
  return {
    pairs,
    gone: [...before.values()].filter((one) => !old.has(one)),
    fresh: [...after.values()].filter((one) => !now.has(one)),
  };
}

/** Fewer could be alike by chance. */
const leastMembers = 2;

/** All that an entry says but its name. */
function membersOf(item: Item): readonly (readonly [string, string])[] {
  const torque =
    'torque' in item && item.torque !== undefined ? torqueText(item.torque) : undefined;
  const members = [...entryMembers(item, (id) => id)].map(
    ([field, { text }]) => [field, text] as const,
  );
  return [...members, ...(torque === undefined ? [] : [['torque', torque] as const])]
    .filter(([field]) => field !== 'name')
    .sort(([a], [b]) => compareText(a, b));
}

/** Pairs what has the same key, where only one on each side has it. */
export function pairUnique<T extends object>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (one: T) => string,
): Pairing<T> {
  const [old, now] = [once(before, keyOf), once(after, keyOf)];
  const pairs = [...old].flatMap(([key, one]) => {
    const other = now.get(key);
    return other === undefined ? [] : [[one, other] as const];
  });
  const [taken, given] = [new Set(pairs.map(([one]) => one)), new Set(pairs.map(([, one]) => one))];
  return {
    pairs,
    gone: before.filter((one) => !taken.has(one)),
    fresh: after.filter((one) => !given.has(one)),
  };
}

function once<T extends object>(
  all: readonly T[],
  keyOf: (one: T) => string,
): ReadonlyMap<string, T> {
  const groups = Map.groupBy(all, keyOf);
  return new Map(
    [...groups].flatMap(([key, [first, second]]) =>
      first === undefined || second !== undefined ? [] : [[key, first] as const],
    ),
  );
}
