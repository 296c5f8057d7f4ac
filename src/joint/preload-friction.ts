/** How the threads are when they are tightened; dry where nothing is said. */
export type ThreadCondition = 'dry' | 'oiled' | 'plated' | 'compound';

/**
 * Nut factors of one condition, the upper one where sources differ, so that no torque is called too much on the word of
 * the lower one. Clean dry steel 0.20, zinc plated 0.17, lubricated 0.15: a newsletter on the testing of fasteners.
 * Zinc 0.20, lubricated 0.18: Shigley, Mechanical Engineering Design, table of torque factors, from memory. Compound is
 * taken as lubricated: our own choice. Single joints scatter by 25 to 30 % around them (common practice).
 */
const factors: Readonly<Record<ThreadCondition, number>> = {
  dry: 0.2,
  plated: 0.2,
  oiled: 0.18,
  compound: 0.18,
};

/**
 * Stainless steel on stainless steel, dry: 0.30 to 0.50 for type 302 in the chart of a fastener supplier (its name is
 * left out). The lower end is our own choice, as the charts disagree.
 */
const stainlessDry = 0.3;

export function nutFactor(condition: ThreadCondition | undefined, isStainless: boolean): number {
  const isBare = condition === undefined || condition === 'dry';
  return isStainless && isBare ? stainlessDry : factors[condition ?? 'dry'];
}
