import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Point, pitch, placeCallouts } from '../../src/render/callout-places.ts';

const size = { width: 640, height: 400 };
const point = fc.record({
  x: fc.integer({ min: 0, max: 640 }),
  y: fc.integer({ min: 0, max: 400 }),
});
const single = fc.array(
  point.map((one) => [one]),
  { minLength: 1, maxLength: 20 },
);

describe('the numbers around a picture', () => {
  test('stand level with what they show, at the nearest edge, where nothing is in their way', () => {
    const { circles, box } = placeCallouts(size, [[{ x: 30, y: 200 }], [{ x: 320, y: 390 }]]);
    expect(circles[0]).toMatchObject({ y: 200 });
    expect(circles[0]?.x).toBeLessThan(0);
    expect(circles[1]).toMatchObject({ x: 320 });
    expect(circles[1]?.y).toBeGreaterThan(400);
    expect(box.x).toBeLessThan(box.y);
  });

  test('have leaders that do not cross', () => {
    fc.assert(
      fc.property(single, (callouts) => {
        const { circles } = placeCallouts(size, callouts);
        const lines = circles.map((from, i) => [from, callouts[i]?.[0] ?? from] as const);
        for (const [i, a] of lines.entries()) {
          for (const b of lines.slice(i + 1)) expect(cross(a, b)).toBe(false);
        }
      }),
    );
  });

  test('are outside of the picture, inside of the whole, and far enough apart for a finger', () => {
    fc.assert(
      fc.property(single, (callouts) => {
        const { circles, box } = placeCallouts(size, callouts);
        for (const [i, { x, y }] of circles.entries()) {
          expect(x < 0 || y < 0 || x > size.width || y > size.height).toBe(true);
          expect(x).toBeGreaterThan(box.x);
          expect(y).toBeGreaterThan(box.y);
          expect(x).toBeLessThan(box.x + box.width);
          expect(y).toBeLessThan(box.y + box.height);
          for (const other of circles.slice(i + 1))
            expect(Math.hypot(other.x - x, other.y - y)).toBeGreaterThan(pitch - 1e-6);
        }
      }),
    );
  });

  test('come to an end for more call-outs than there is room for', () => {
    const many = Array.from({ length: 200 }, (_, i) => [{ x: (i * 37) % 640, y: (i * 91) % 400 }]);
    const { circles } = placeCallouts(size, many);
    expect(circles.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
    expect(placeCallouts({ width: 10, height: 10 }, many).circles).toHaveLength(200);
    expect(placeCallouts(size, []).circles).toEqual([]);
  });
});

type Line = readonly [Point, Point];

/** Whether two lines meet between their ends: the ends of each lie on both sides of the other. */
function cross([a, b]: Line, [c, d]: Line): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  const least = 1e-3;
  const apart = (one: number, other: number): boolean =>
    (one > least && other < -least) || (one < -least && other > least);
  return apart(side(a, b, c), side(a, b, d)) && apart(side(c, d, a), side(c, d, b));
}
