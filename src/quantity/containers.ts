import { mostOf } from './exact-amount.ts';
import type { Single } from './quantity.ts';
import { compare, divide, fraction, type Rational } from './rational.ts';

/** Containers of one size. */
export interface ContainerCount {
  readonly size: Single;
  readonly count: number;
}

/** As many cells as the table of sums may have. */
const largestTable = 1_000_000n;

/**
 * The containers that hold an amount, the largest first: the least excess decides, then the fewest containers, then
 * the larger sizes. All are of one kind. Empty where nothing is needed or no size is given. Sums are exact; only where
 * the sizes have next to nothing in common (1 L beside 1 US gal, for a lake) each is taken a millionth of the need
 * smaller than it is, so that there is never too little.
 */
export function containersFor(need: Rational, sizes: readonly Single[]): readonly ContainerCount[] {
  if (need.n <= 0n) return [];
  const usable = sizes
    .map((size) => ({ size, exact: mostOf(size) }))
    .filter(({ exact }) => exact.n > 0n)
    .sort((a, b) => compare(b.exact, a.exact));
  const smallest = usable.at(-1);
  if (smallest === undefined) return [];
  if (compare(smallest.exact, need) >= 0) return [{ size: smallest.size, count: 1 }];
  const shared = usable.map(({ exact }) => exact).reduce(sharedMeasure);
  const isTooFine = ceiling(divide(need, shared)) > largestTable;
  const unit = isTooFine ? divide(need, fraction(largestTable, 1n)) : shared;
  const weights = usable.map(({ exact }) => Number(floor(divide(exact, unit))));
  const counts = fewest(Number(ceiling(divide(need, unit))), weights);
  return usable.flatMap(({ size }, i) => {
    const count = counts[i] ?? 0;
    return count === 0 ? [] : [{ size, count }];
  });
}

/** How many of each weight reach `need`: the least sum, of these the fewest, of these the earlier weights. */
function fewest(need: number, weights: readonly number[]): readonly number[] {
  // The smallest weight alone oversteps the need by less than itself.
  const end = need + Math.min(...weights.filter((weight) => weight > 0));
  const counts = new Float64Array(end).fill(Number.POSITIVE_INFINITY);
  const last = new Int32Array(end);
  counts[0] = 0;
  for (let sum = 1; sum < end; sum += 1) {
    weights.forEach((weight, i) => {
      if (weight === 0 || weight > sum) return;
      const count = (counts[sum - weight] ?? 0) + 1;
      if (count >= (counts[sum] ?? 0)) return;
      counts[sum] = count;
      last[sum] = i;
    });
  }
  const found = weights.map(() => 0);
  let sum = counts.findIndex((count, i) => i >= need && Number.isFinite(count));
  while (sum > 0) {
    const i = last[sum] ?? 0;
    found[i] = (found[i] ?? 0) + 1;
    sum -= weights[i] ?? sum;
  }
  return found;
}

/** The largest amount of which both are whole multiples. */
function sharedMeasure(a: Rational, b: Rational): Rational {
  return fraction(divisor(a.n * b.d, b.n * a.d), a.d * b.d);
}

function divisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : divisor(b, a % b);
}

const floor = ({ n, d }: Rational): bigint => n / d;
const ceiling = ({ n, d }: Rational): bigint => (n + d - 1n) / d;
