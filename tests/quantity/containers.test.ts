import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  containersFor,
  isMeasureOf,
  mostOf,
  parseQuantity,
  percentOf,
  printAsWritten,
  type Single,
  singleOf,
  toNumber,
} from '../../src/quantity/index.ts';

function size(text: string): Single {
  const { value } = parseQuantity(text);
  if (value?.form !== 'single') throw new Error(`${text} is not one amount`);
  return value;
}

function most(text: string) {
  const { value } = parseQuantity(text);
  if (value === undefined || !(isMeasureOf(value, 'volume') || isMeasureOf(value, 'mass')))
    throw new Error(`${text} is no amount`);
  return mostOf(value);
}

const chosen = (need: string, ...sizes: string[]): string[] =>
  containersFor(most(need), sizes.map(size)).map(
    ({ size, count }) => `${count} × ${printAsWritten(size).replaceAll('\u00a0', ' ')}`,
  );

describe('containers', () => {
  test('have the least excess, then the fewest containers, the largest first', () => {
    expect(chosen('38 L', '5 L', '20 L')).toEqual(['2 × 20 L']);
    expect(chosen('38 L', '1 L', '5 L', '20 L')).toEqual(['1 × 20 L', '3 × 5 L', '3 × 1 L']);
    expect(chosen('7.6 L', '1 L', '5 L')).toEqual(['1 × 5 L', '3 × 1 L']);
    // The largest first would take 4 + 1 + 1.
    expect(chosen('6 L', '4 L', '3 L', '1 L')).toEqual(['2 × 3 L']);
  });

  test('are none for nothing, and one where the smallest holds all', () => {
    expect(chosen('0 L', '1 L')).toEqual([]);
    expect(chosen('0.3 L', '200 L', '55 US gal')).toEqual(['1 × 200 L']);
    expect(chosen('5 L')).toEqual([]);
  });

  test('are exact where binary fractions are not: 3 × 0.1 L is 0.3 L', () => {
    expect(chosen('0.3 L', '0.1 L')).toEqual(['3 × 0.1 L']);
  });

  test('may be of several units', () => {
    // 1 US gal is 3.785411784 L (NIST Handbook 44, appendix C).
    expect(chosen('1 US gal', '500 mL', '1 L')).toEqual(['4 × 1 L']);
    expect(chosen('2 US gal', '1 US qt', '1 US gal')).toEqual(['2 × 1 US gal']);
  });

  test('hold enough where sizes of two systems are mixed for a large need', () => {
    const need = most('1000 L');
    const sizes = [size('20 L'), size('5 US gal')];
    const found = containersFor(need, sizes);
    const sum = found.reduce((all, { size, count }) => all + toNumber(mostOf(size)) * count, 0);
    expect(sum).toBeGreaterThanOrEqual(1000);
    expect(sum).toBeLessThan(1000.1);
  });

  const millilitres = fc.integer({ min: 1, max: 60 });

  test('law: they hold the need, and no other choice has less excess or, at the same, fewer containers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 150 }),
        fc.uniqueArray(millilitres, { minLength: 1, maxLength: 4 }),
        (need, sizes) => {
          const found = containersFor(
            most(`${need} mL`),
            sizes.map((one) => size(`${one} mL`)),
          );
          const sum = found.reduce((all, { size, count }) => all + size.amount.value * count, 0);
          const count = found.reduce((all, one) => all + one.count, 0);
          expect([sum, count]).toEqual(cheapest(need, sizes));
        },
      ),
    );
  });
});

/** By trying every choice: the least sum that is enough, and the fewest containers that make it. */
function cheapest(need: number, [first, ...rest]: readonly number[]): [number, number] {
  if (first === undefined) return need <= 0 ? [0, 0] : [Number.POSITIVE_INFINITY, 0];
  let best: [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (let n = 0; n <= Math.ceil(Math.max(0, need) / first); n += 1) {
    const [sum, count] = cheapest(need - n * first, rest);
    const all: [number, number] = [sum + n * first, count + n];
    if (all[0] < best[0] || (all[0] === best[0] && all[1] < best[1])) best = all;
  }
  return best;
}

describe('exact amounts', () => {
  test('of a range and a tolerance are the most that they allow', () => {
    expect(toNumber(most('7..7.6 L'))).toBe(7.6);
    expect(toNumber(most('38 ± 1 L'))).toBe(39);
    expect(toNumber(most('min 5 L'))).toBe(5);
  });

  test('are printed as finely as the whole, or ten times finer where they do not come out even', () => {
    const half = percentOf(most('5 L'), { n: 50n, d: 1n });
    expect(printAsWritten(singleOf(half, 'L', 1))).toBe('2.5\u00a0L');
    expect(printAsWritten(singleOf(most('4 L'), 'L', 1))).toBe('4\u00a0L');
  });
});
