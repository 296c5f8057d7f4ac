import measure from 'damerau-levenshtein';

/** How many letters must be added, dropped, changed or swapped to make one text of the other. */
export const slipsBetween = (a: string, b: string): number => measure(a, b).steps;

/** Longer words are no slips of the finger any more, and cost time. */
const longest = 64;

/**
 * The candidate that was probably meant: the fewest slips (letters too many, too few, wrong or
 * swapped), at most one for each three letters and three in all. Of equals, the first.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > longest) return undefined;
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let fewest = Math.min(3, Math.max(1, Math.floor(word.length / 3))) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= fewest) continue;
    const slips = slipsBetween(wanted, candidate.toLowerCase());
    if (slips < fewest) {
      fewest = slips;
      best = candidate;
    }
  }
  return best;
}
