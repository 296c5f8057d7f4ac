import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverOf, freezingPoint, freezingTables } from '../../src/mixture/index.ts';

describe('ethylene glycol and water, by volume', () => {
  // ASHRAE Handbook, Fundamentals, freezing points of aqueous ethylene glycol, as CoolProp has them (open source, data
  // file "ASHRAE, Ethylene Glycol_TFreeze"; the page of the handbook was not seen): the printed points, some of which
  // our table leaves out and must still give by interpolation.
  test.each([
    [0, 0],
    [4.4, -1.4],
    [18.1, -7.8],
    [19.2, -8.4],
    [21, -9.5],
    [22.9, -10.7],
    [24.8, -12],
    [26.7, -13.3],
    [28.7, -14.8],
    [30.6, -16.2],
    [32.6, -17.9],
    [34.5, -19.4],
    [36.5, -21.3],
    [38.5, -23.2],
    [40.5, -25.3],
    [42.5, -27.5],
    [44.5, -29.8],
    [46.6, -32.6],
    [48.6, -35.1],
    [53.7, -42.6],
    [55.7, -45.6],
    [57.8, -48.3],
  ])('%d %% freezes at %d °C to 0.3 °C', (percent, celsius) => {
    const found = freezingPoint('ethylene-glycol', percent);
    expect(Math.abs((found ?? Number.NaN) - celsius)).toBeLessThanOrEqual(0.3);
  });

  test('50 % freezes at −37 °C, as the neighbours in the table give it', () => {
    expect(freezingPoint('ethylene-glycol', 50)).toBeCloseTo(-37, 6);
  });

  // Melinder (IIR), properties of secondary working fluids, gives shares by mass; ASHRAE has the volume beside the mass.
  test.each([
    [8.9, -3.4],
    [18.1, -7.9],
    [27.7, -14.6],
    [37.5, -23.9],
    [47.6, -36.0],
  ])('%d %% by volume agrees with Melinder to 2.5 °C: %d °C', (percent, celsius) => {
    const found = freezingPoint('ethylene-glycol', percent);
    expect(Math.abs((found ?? Number.NaN) - celsius)).toBeLessThanOrEqual(2.5);
  });
});

describe('propylene glycol and water, by volume', () => {
  // Lange's Handbook of Chemistry, 15th edition, table 5.13.
  test.each([
    [5, -1.1],
    [10, -2.2],
    [20, -6.7],
    [30, -12.8],
    [40, -20.6],
    [45, -26.7],
    [50, -33.3],
  ])('%d %% freezes at %d °C', (percent, celsius) => {
    expect(freezingPoint('propylene-glycol', percent)).toBe(celsius);
  });
});

describe('nothing is known outside of a table', () => {
  test.each([
    ['ethylene-glycol', 57.9],
    ['ethylene-glycol', 100],
    ['ethylene-glycol', -1],
    ['propylene-glycol', 4.9],
    ['propylene-glycol', 50.1],
  ] as const)('%s at %d %%', (base, percent) => {
    expect(freezingPoint(base, percent)).toBeUndefined();
  });

  test('what it covers', () => {
    expect(coverOf('ethylene-glycol')).toEqual({ from: 0, to: 57.8 });
    expect(coverOf('propylene-glycol')).toEqual({ from: 5, to: 50 });
  });
});

test('law: inside the table more glycol freezes lower, and between its two neighbours', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('ethylene-glycol' as const, 'propylene-glycol' as const),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (base, a, b) => {
        const { from, to } = coverOf(base);
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((x) => from + x * (to - from));
        const [warm, cold] = [less, more].map((percent) => freezingPoint(base, percent ?? 0));
        expect(warm).toBeGreaterThanOrEqual(cold ?? Number.NaN);
      },
    ),
  );
});

test('the points of each table rise in share and fall in temperature', () => {
  for (const { points } of Object.values(freezingTables)) {
    for (const [i, [percent, celsius]] of points.entries()) {
      const next = points[i + 1];
      if (next === undefined) continue;
      expect(next[0]).toBeGreaterThan(percent);
      expect(next[1]).toBeLessThan(celsius);
    }
  }
});
