import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { QuantityPieces } from '../quantity/index.ts';

/** The first unit, and the second one in brackets, set apart so that it can be printed smaller. */
export function twoUnits({ first, second }: QuantityPieces): ElementContent[] {
  const one = h('span.first', first);
  return second === undefined
    ? [one]
    : [one, { type: 'text', value: ' ' }, h('span.second', `(${second})`)];
}
