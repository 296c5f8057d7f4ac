import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correctionOf, replacement } from '../../src/mixture/index.ts';

describe('worked examples of textbooks', () => {
  // Elementary Technical Mathematics, section 6.6, exercise 23: of 12 quarts at 40 %, 4 quarts are drained and replaced
  // by pure antifreeze for 60 %.
  test('12 quarts from 40 % to 60 %: 4 quarts', () => {
    expect(12 * (replacement(0.4, 0.6) ?? Number.NaN)).toBeCloseTo(4, 9);
  });

  // Stewart, Precalculus, 6th edition, section 1.6, exercise 57: of 3.6 L at 60 %, 0.6 L are drained and replaced by water
  // for 50 %.
  test('3.6 L from 60 % to 50 %: 0.6 L', () => {
    expect(3.6 * (replacement(0.6, 0.5) ?? Number.NaN)).toBeCloseTo(0.6, 9);
    expect(correctionOf(60, 50)?.pourIn).toBe('water');
  });
});

// Of no book: worked by hand. 10 quarts at 30 %, x of them replaced by pure antifreeze: 3 − 0.3x + x = 6.5, so x = 5.
test('10 quarts from 30 % to 65 %: 5 quarts', () => {
  expect(10 * (replacement(0.3, 0.65) ?? Number.NaN)).toBeCloseTo(5, 9);
  expect(correctionOf(30, 65)?.pourIn).toBe('concentrate');
});

test('nothing is to be done, or nothing helps', () => {
  expect(correctionOf(50, 50)).toBeUndefined();
  expect(replacement(1, 1)).toBe(0);
  expect(replacement(0.2, 1)).toBeCloseTo(1, 9);
  expect(replacement(-0.1, 0.5)).toBeUndefined();
  expect(replacement(0.5, 1.2)).toBeUndefined();
  expect(replacement(Number.NaN, 0.5)).toBeUndefined();
});

test('law: what is left and what is poured in make the share that was wanted', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      share,
      share,
      fc.double({ min: 0.1, max: 500, noNaN: true }),
      (now, target, whole) => {
        const replaced = replacement(now, target) ?? Number.NaN;
        expect(replaced).toBeGreaterThanOrEqual(0);
        expect(replaced).toBeLessThanOrEqual(1);
        const drained = whole * replaced;
        const poured = target > now ? drained : 0;
        const concentrate = now * (whole - drained) + poured;
        expect(Math.abs(concentrate / whole - target)).toBeLessThan(1e-9);
      },
    ),
  );
});
