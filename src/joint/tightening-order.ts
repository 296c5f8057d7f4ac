import type { Pattern } from '../../schemas/catalogue.ts';
import { type Layout, layoutOf, type Position } from './positions.ts';
import { circleOrder } from './tightening-order-circle.ts';
import { outwardOrder } from './tightening-order-outward.ts';

/** A pattern with its bolts in the order in which they are tightened. */
export interface TighteningOrder extends Omit<Layout, 'positions'> {
  readonly order: readonly Position[];
}

/** A circle is tightened crosswise, everything else from the centre outward. */
export function tighteningOrder(pattern: Pattern): TighteningOrder {
  const { positions, ...frame } = layoutOf(pattern);
  if (!('circle' in pattern)) return { ...frame, order: outwardOrder(positions) };
  const order = circleOrder(positions.length).flatMap((number) => positions[number - 1] ?? []);
  return { ...frame, order };
}

/** Loosening goes the other way round: the bolt that was tightened last is loosened first (general practice). */
export function looseningOrder(pattern: Pattern): TighteningOrder {
  const { order, ...frame } = tighteningOrder(pattern);
  return { ...frame, order: order.toReversed() };
}
