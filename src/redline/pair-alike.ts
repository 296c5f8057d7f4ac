import type { Pairing } from './pair-entries.ts';

/**
 * Pairs what is most alike first, where it is alike enough; of equals what stands nearest. The result is the same
 * with the sides exchanged.
 *
 * @param likeness from 0 to 1
 */
export function pairAlike<T>(
  before: readonly T[],
  after: readonly T[],
  likeness: (a: T, b: T) => number,
  least: number,
): Pairing<T> {
  const found = before.flatMap((one, i) =>
    after.flatMap((other, j) => {
      const like = likeness(one, other);
      return like < least ? [] : [{ i, j, one, other, like }];
    }),
  );
  found.sort(
    (a, b) =>
      b.like - a.like || Math.abs(a.i - a.j) - Math.abs(b.i - b.j) || a.i + a.j - (b.i + b.j),
  );
  const [taken, given] = [new Set<number>(), new Set<number>()];
  const pairs = found.flatMap(({ i, j, one, other }) => {
    if (taken.has(i) || given.has(j)) return [];
    taken.add(i);
    given.add(j);
    return [[one, other] as const];
  });
  return {
    pairs,
    gone: before.filter((_, i) => !taken.has(i)),
    fresh: after.filter((_, j) => !given.has(j)),
  };
}

/** The share of what two lists have in common, each piece counted as often as it stands there; 1 for two empty ones. */
export function shared(a: readonly string[], b: readonly string[]): number {
  if (a.length + b.length === 0) return 1;
  const left = new Map<string, number>();
  for (const one of a) left.set(one, (left.get(one) ?? 0) + 1);
  let both = 0;
  for (const one of b) {
    const count = left.get(one) ?? 0;
    if (count > 0) both += 1;
    left.set(one, count - 1);
  }
  return both / (a.length + b.length - both);
}

/** Words for comparison: small letters, no punctuation. */
export const wordList = (text: string): readonly string[] =>
  text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
