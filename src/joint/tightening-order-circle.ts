/**
 * Numbers of the bolts on a circle, 1 to n clockwise, in the order in which they are tightened: opposite pairs first,
 * then the quarter points, as in the legacy cross-pattern of ASME PCC-1 (its lists for 4, 8, 12, 16, 20 and 24 come out
 * as published). Groups of four follow each other as the bolts of a circle of n/4 would; pairs, where n is not a multiple
 * of four, as those of n/2. An odd number has no opposite pairs: a star, each bolt almost opposite to the one before.
 */
export function circleOrder(count: number): readonly number[] {
  if (count < 3) return Array.from({ length: count }, (_, i) => i + 1);
  if (count % 4 === 0) return groups(count, [0, 1 / 2, 1 / 4, 3 / 4]);
  if (count % 2 === 0) return groups(count, [0, 1 / 2]);
  const step = (count - 1) / 2;
  return Array.from({ length: count }, (_, i) => ((i * step) % count) + 1);
}

/** Bolts a share of the circle apart as one group, the groups in the order of their first bolts. */
function groups(count: number, shares: readonly number[]): readonly number[] {
  return circleOrder(count / shares.length).flatMap((first) =>
    shares.map((share) => first + share * count),
  );
}
