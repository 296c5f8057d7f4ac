import { unitSize } from '../quantity/index.ts';
import type { Thread } from './thread-model.ts';

/** Millimetres in an inch, exact since 1959. */
const inchInMillimetres = unitSize('in');

/**
 * Tensile stress area in mm². Metric: π/4 (d − 0.9382 P)², ISO 898-1; inch: π/4 (D − 0.9743/n)², ASME B1.1.
 */
export function stressArea(thread: Thread): number {
  if (thread.standard === 'metric') return circle(thread.diameter - 0.9382 * thread.pitch);
  return circle(thread.diameter - 0.9743 / thread.perInch) * inchInMillimetres ** 2;
}

/** Nominal diameter in mm. */
export function nominalDiameter(thread: Thread): number {
  return thread.standard === 'metric' ? thread.diameter : thread.diameter * inchInMillimetres;
}

const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2;
