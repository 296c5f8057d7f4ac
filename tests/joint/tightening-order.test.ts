import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pattern } from '../../schemas/catalogue.ts';
import { positionsOf } from '../../src/catalogue/index.ts';
import {
  layoutOf,
  looseningOrder,
  type TighteningOrder,
  tighteningOrder,
} from '../../src/joint/index.ts';

const numbers = ({ order }: TighteningOrder): number[] => order.map(({ number }) => number);
const orderOf = (pattern: Pattern): number[] => numbers(tighteningOrder(pattern));

/**
 * ASME PCC-1 (2013 and 2019 editions), tables for the legacy cross-pattern, bolts numbered clockwise. From memory; the
 * standard's own tables were not seen. Two open-source calculators that cite them agree, one on all, one on 4, 8 and 12.
 */
const legacyCrossPattern: Readonly<Record<number, readonly number[]>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
  24: [1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24],
};

/** From memory: the common star of 5, and opposite pairs for 6, of which several variants are in use. */
const starsFromMemory: Readonly<Record<number, readonly number[]>> = {
  5: [1, 3, 5, 2, 4],
  6: [1, 4, 2, 5, 3, 6],
};

describe('a circle', () => {
  test.each(Object.entries(legacyCrossPattern))('of %s: ASME PCC-1', (count, published) => {
    expect(orderOf({ circle: Number(count) })).toEqual(published);
  });

  test.each(Object.entries(starsFromMemory))('of %s: star, from memory', (count, star) => {
    expect(orderOf({ circle: Number(count) })).toEqual(star);
  });

  test('of 2, 3 and 7 bolts', () => {
    expect(orderOf({ circle: 2 })).toEqual([1, 2]);
    expect(orderOf({ circle: 3 })).toEqual([1, 2, 3]);
    expect(orderOf({ circle: 7 })).toEqual([1, 4, 7, 3, 6, 2, 5]);
  });

  const circle = fc.integer({ min: 1, max: 400 });

  test('of any number of bolts takes each once', () => {
    fc.assert(
      fc.property(circle, (count) => {
        expect(orderOf({ circle: count }).toSorted((a, b) => a - b)).toEqual(
          Array.from({ length: count }, (_, i) => i + 1),
        );
      }),
    );
  });

  test('of 5 bolts and more never takes neighbours in a row', () => {
    for (let count = 5; count <= 400; count += 1) {
      const order = orderOf({ circle: count });
      const near = order.slice(1).filter((one, i) => {
        const apart = Math.abs(one - (order[i] ?? one));
        return Math.min(apart, count - apart) < 2;
      });
      expect(near, `circle of ${count}`).toEqual([]);
    }
  });

  test('with an even number takes opposite bolts in pairs, with a multiple of four the quarter points', () => {
    for (let count = 4; count <= 200; count += 2) {
      const order = orderOf({ circle: count });
      for (let i = 0; i < count; i += 2) {
        expect(turn(order[i], order[i + 1], count)).toBe(count / 2);
      }
      for (let i = 0; count % 4 === 0 && i < count; i += 4) {
        expect(turn(order[i], order[i + 2], count)).toBe(count / 4);
      }
    }
  });

  test('has its bolts clockwise from the top', () => {
    const { positions } = layoutOf({ circle: 4 });
    const places = positions.map(({ x, y }) => [Math.round(x * 2) / 2, Math.round(y * 2) / 2]);
    expect(places).toEqual([[0.5, 0], [1, 0.5], [0.5, 1], [0, 0.5]]); // biome-ignore format: one line
  });
});

/** How many bolts further round the circle, clockwise. */
const turn = (from = 0, to = 0, count = 1): number => (to - from + count) % count;

/** From the centre outward, alternating sides: general engineering practice, no published list. */
describe('what is no circle', () => {
  test.each<[Pattern, number[]]>([
    [{ rows: [5] }, [3, 2, 4, 1, 5]],
    [{ rows: [4, 4] }, [2, 7, 3, 6, 4, 5, 8, 1]],
    [{ rows: [3, 3] }, [2, 5, 1, 6, 4, 3]],
    [{ rectangle: [2, 2] }, [1, 3, 2, 4]],
    [{ rectangle: [3, 3] }, [2, 6, 4, 8, 3, 7, 1, 5]],
    [{ rectangle: [1, 3] }, [2, 1, 3]],
    [{ positions: [[0, 0], [0, 9], [7, 0], [3, 3]] }, [4, 1, 3, 2]], // biome-ignore format: one line
  ])('%j', (pattern, order) => {
    expect(orderOf(pattern)).toEqual(order);
  });

  const small = fc.integer({ min: 1, max: 12 });
  const points = fc.uniqueArray(
    fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })),
    {
      minLength: 2,
      maxLength: 20,
      selector: String,
    },
  );
  const flat = fc.oneof(
    fc.record({ rows: fc.array(small, { minLength: 1, maxLength: 5 }) }),
    fc.record({ rectangle: fc.tuple(small, small) }),
    fc.record({ positions: points }),
  );

  test('takes each bolt once, never nearer to the centre than the one before', () => {
    fc.assert(
      fc.property(flat, (pattern) => {
        const { order } = tighteningOrder(pattern);
        expect(order.map(({ number }) => number).toSorted((a, b) => a - b)).toEqual(
          Array.from({ length: positionsOf(pattern) }, (_, i) => i + 1),
        );
        const away = distances(order);
        expect(away.every((one, i) => i === 0 || one >= (away[i - 1] ?? 0) - 1e-6)).toBe(true);
      }),
    );
  });

  test('keeps its order when it is turned, mirrored, moved or drawn to another scale', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -9, max: 9 }), (positions, by) => {
        const order = orderOf({ positions });
        const moved = (map: (x: number, y: number) => [number, number]) =>
          orderOf({ positions: positions.map(([x, y]) => map(x, y)) });
        expect(moved((x, y) => [-y, x])).toEqual(order);
        expect(moved((x, y) => [-x, y])).toEqual(order);
        expect(moved((x, y) => [x + by, y - by])).toEqual(order);
        expect(moved((x, y) => [4 * x, 4 * y])).toEqual(order);
      }),
    );
  });

  test('lies in a box whose longer side is one', () => {
    fc.assert(
      fc.property(flat, (pattern) => {
        const { width, height, positions } = layoutOf(pattern);
        expect(Math.max(width, height)).toBe(positions.length === 1 ? 0 : 1);
        for (const { x, y } of positions) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(height);
        }
      }),
    );
  });

  test('has rows like text, a rectangle clockwise, and free positions with y up', () => {
    const places = (pattern: Pattern) => layoutOf(pattern).positions.map(({ x, y }) => [x, y]);
    expect(places({ rows: [2, 3] })).toEqual([[0.25, 0], [0.75, 0], [0, 0.5], [0.5, 0.5], [1, 0.5]]); // biome-ignore format: one line
    expect(places({ rectangle: [3, 2] })).toEqual([[0, 0], [0.5, 0], [1, 0], [1, 0.5], [0.5, 0.5], [0, 0.5]]); // biome-ignore format: one line
    expect(places({ positions: [[10, 10], [10, 30]] })).toEqual([[0, 1], [0, 0]]); // biome-ignore format: one line
  });
});

test('loosening is the reverse', () => {
  expect(numbers(looseningOrder({ circle: 8 }))).toEqual([8, 4, 6, 2, 7, 3, 5, 1]);
  expect(numbers(looseningOrder({ rows: [5] }))).toEqual([5, 1, 4, 2, 3]);
});

function distances(order: TighteningOrder['order']): number[] {
  const x = order.reduce((sum, one) => sum + one.x, 0) / order.length;
  const y = order.reduce((sum, one) => sum + one.y, 0) / order.length;
  return order.map((one) => Math.hypot(one.x - x, one.y - y));
}
