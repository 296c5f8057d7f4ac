import type { Pattern } from '../../schemas/catalogue.ts';
import type { TighteningOrder } from '../joint/index.ts';

/** "circle of 8", "rows of 4 and 4", "3 by 2 around a rectangle", "7 places" */
export function patternWords(pattern: Pattern): string {
  if ('circle' in pattern) return `circle of ${pattern.circle}`;
  if ('positions' in pattern) return `${pattern.positions.length} places`;
  if ('rectangle' in pattern) {
    const [along, across] = pattern.rectangle;
    return `${along} by ${across} around a rectangle`;
  }
  const [first, ...others] = pattern.rows;
  if (others.length === 0) return `row of ${first}`;
  return `rows of ${[first, ...others.slice(0, -1)].join(', ')} and ${others.at(-1)}`;
}

/** How positions of a pattern are counted, for an order that is said and not shown. */
export function countedWords(pattern: Pattern): string {
  if ('circle' in pattern) return 'counted clockwise from the top';
  if ('rectangle' in pattern) return 'counted clockwise from the top left corner';
  return 'rows' in pattern
    ? 'counted row by row from the top left'
    : 'in the order in which the catalogue lists them';
}

/** "1, 5, 3, 7, 2, 6, 4, 8" */
export const numbersInOrder = ({ order }: TighteningOrder): string =>
  order.map(({ number }) => number).join(', ');
