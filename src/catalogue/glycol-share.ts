import type { Quantity } from '../quantity/index.ts';
import type { Circuit } from './model.ts';

/**
 * The percent by volume of the concentrate in a mix of concentrate and water: the first share, of a mix that names the
 * concentrate alone or water after it. Undefined for any other mix, whose freezing point nobody can look up.
 */
export function glycolShare({ mix }: Pick<Circuit, 'mix'>): number | undefined {
  const [first, second] = mix;
  if (first === undefined || mix.length > 2 || isWater(first.name)) return undefined;
  const percent = percentOf(first.share);
  if (percent === undefined || percent > 100) return undefined;
  if (second === undefined) return percent;
  const rest = percentOf(second.share);
  // Half a percent of slack for rounded shares: 33 and 67.
  return rest !== undefined && Math.abs(percent + rest - 100) < 0.5 ? percent : undefined;
}

const isWater = (name: string): boolean => /\bwater\b/i.test(name);

const percentOf = (share: Quantity): number | undefined =>
  share.form === 'single' && share.unit === '%' ? share.amount.value : undefined;
