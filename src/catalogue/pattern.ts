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
