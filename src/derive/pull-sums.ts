import { PartitionMap, type Space, type VariantSet } from '../applicability/index.ts';

/** How much of something several procedures need, together and each. */
export interface PullSum<T> {
  readonly total: PartitionMap<T>;
  /** For each procedure, who needs some for it. */
  readonly users: readonly VariantSet[];
}

/** The arithmetic of one kind of amount. */
export interface Amounts<T> {
  readonly none: T;
  readonly add: (a: T, b: T) => T;
  readonly compare: (a: T, b: T) => number;
  readonly key: (value: T) => string | number;
}

/** More cases than this are told as one, with the most of all. */
const mostCases = 4;

/** Adds up what procedures need; `of` reads the amount of one, undefined where it needs none. */
export function sumOver<T, U>(
  space: Space,
  maps: readonly (PartitionMap<U> | undefined)[],
  amounts: Amounts<T>,
  of: (value: U) => T,
): PullSum<T> {
  const none = PartitionMap.constant(space, amounts.none, amounts.key);
  const each = maps.map((map) =>
    map === undefined ? none : none.combine(map, (_, value) => of(value), amounts.key),
  );
  return {
    total: each.reduce((a, b) => a.combine(b, amounts.add, amounts.key), none),
    users: each.map((map) => map.where((value) => amounts.compare(value, amounts.none) > 0)),
  };
}

/** A case of a list: who needs how much. */
export interface SumCase<T> {
  readonly set: VariantSet;
  readonly value: T;
  /** True where the value is the most of many cases. */
  readonly isMost: boolean;
}

/** The cases among some machines in which any is needed, in order of their first machines. */
export function casesOf<T>(
  { total }: PullSum<T>,
  machines: VariantSet,
  space: Space,
  { none, compare }: Amounts<T>,
): readonly SumCase<T>[] {
  const cases = total.at(machines).filter(({ value }) => compare(value, none) > 0);
  const [first, ...others] = cases;
  if (first === undefined) return [];
  const areTold =
    cases.length <= mostCases &&
    cases.every(({ set }) => space.describe(set, machines) !== 'too-long');
  if (areTold) return cases.map((one) => ({ ...one, isMost: false }));
  const most = others.reduce((a, b) => (compare(b.value, a.value) > 0 ? b : a), first);
  const set = others.reduce((all, one) => space.or(all, one.set), first.set);
  return [{ set, value: most.value, isMost: true }];
}
