import type { Pattern } from '../../schemas/catalogue.ts';

/**
 * How many fasteners a pattern has. A rectangle has them around its edge, as a cover does: the numbers along
 * two neighbouring sides, with the corner they share counted in both.
 */
export function positionsOf(pattern: Pattern): number {
  if ('circle' in pattern) return pattern.circle;
  if ('rows' in pattern) return pattern.rows.reduce((sum, row) => sum + row, 0);
  if ('positions' in pattern) return pattern.positions.length;
  const [along, across] = pattern.rectangle;
  return Math.min(along, across) === 1 ? along * across : 2 * (along + across) - 4;
}

/** The first two free positions that are one place, counted from 1. */
export function overlapIn(pattern: Pattern): { first: number; second: number } | undefined {
  if (!('positions' in pattern)) return undefined;
  const seen = new Map<string, number>();
  for (const [i, [x, y]] of pattern.positions.entries()) {
    const place = `${x} ${y}`;
    const first = seen.get(place);
    if (first !== undefined) return { first, second: i + 1 };
    seen.set(place, i + 1);
  }
  return undefined;
}
