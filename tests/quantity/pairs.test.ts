import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  findPairs,
  judgePair,
  kindOfUnit,
  type PairVerdict,
  parseQuantity,
  printPieces,
  unitIds,
} from '../../src/quantity/index.ts';
import { plain, quantity } from './given.ts';

const verdicts = (text: string): readonly PairVerdict[] =>
  findPairs(text).map(({ first, second }) => judgePair(first.quantity, second.quantity));

describe('a pair is one value, said twice', () => {
  // The exact conversions follow from 1 in = 25.4 mm, 1 lbf·ft = 1.355 818 N·m, 1 psi = 6.894 757 kPa and
  // t/°F = 1.8 t/°C + 32 (NIST SP 811 (2008), App. B.8).
  test.each<[string, string]>([
    ['36 ft (11.0 m)', 'NIST SP 811 (2008), B.7.2'],
    ['36 in (91 cm)', 'NIST LC 1137'],
    ['40.1 in (101.9 cm)', 'NIST LC 1137'],
    ['7-1/2 in (190 mm)', 'NIST PS 20-20 App. B1'],
    ['11 mi (18 km)', 'NIST SP 1038 section 4.4, from memory'],
    ['44 lbf·ft (60 N·m)', 'common practice; exactly 59.66 N·m'],
    ['44 lbf·ft (59.7 N·m)', 'common practice'],
    ['3/4 in (19 mm)', 'common practice; exactly 19.05 mm'],
    ['1/2 in (12.7 mm)', 'by definition'],
    ['22 N·m (16 lbf·ft)', 'exactly 16.23 lbf·ft'],
    ['0.2–0.4 mm (0.008–0.016 in)', 'exactly 0.00787 to 0.01575 in'],
    ['100 psi (700 kPa)', 'exactly 689.5 kPa; the zeros may be rounding'],
    ['80 °C (176 °F)', 'by definition'],
    ['-40 °C (-40 °F)', 'by definition'],
    ['44 lbf·ft (60 N·m, 6.1 kgf·m)', 'three units'],
    ['60 N·m / 44 lbf·ft', 'a slash'],
    ['60 N·m [44 lbf·ft]', 'square brackets'],
    ['60 N·m (about 44 lbf·ft)', 'a hedge'],
    ['60 N·m + 90° (44 lbf·ft + 90°)', 'torque and angle'],
    ['1/2 turn (180°)', 'a turn is 360°'],
  ])('%s (%s)', (text) => {
    const found = verdicts(text);
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((verdict) => verdict === 'agrees')).toBe(true);
  });
});

describe('a pair is two values', () => {
  test.each([
    ['44 lbf·ft (65 N·m)'], // 59.66
    ['1/2 in (12 mm)'], // 12.7
    ['0.3 mm (0.12 in)'], // 0.0118: a slipped decimal point
    ['0.2–0.4 mm (0.008–0.019 in)'], // 0.0157
    ['20–24 N·m (14–18 lbf·ft)'], // 14.75: outwards by more than half a step
    ['40 lbf·ft (50 N·m)'], // 54.2
    ['35 psi (2 bar)'], // 2.41: 17 % is no rounding
    ['1 US pt (1 imp pt)'], // 0.833
    ['80 °C (160 °F)'], // 176
    ['60 N·m + 90° (44 lbf·ft + 60°)'],
    ['max 5 bar (80 psi)'], // 72.5
  ])('%s', (text) => {
    expect(verdicts(text)).toEqual(['disagrees']);
  });

  test('of three units the one that is off', () => {
    expect(verdicts('44 lbf·ft (60 N·m, 7.1 kgf·m)')).toEqual(['agrees', 'disagrees']);
  });
});

describe('a limit is rounded the safe way (general practice)', () => {
  test.each<[string, PairVerdict]>([
    ['max 5 bar (73 psi)', 'unsafe'], // 72.52
    ['max 5 bar (72 psi)', 'agrees'],
    ['max 5 bar (max 72 psi)', 'agrees'],
    ['5 bar (73 psi) max.', 'unsafe'],
    ['no more than 5 bar (73 psi)', 'unsafe'],
    ['at least 5 bar (73 psi)', 'agrees'],
    ['min 5 bar (72 psi)', 'unsafe'],
    ['max 1000 kPa (145.04 psi)', 'agrees'], // 145.038: no gauge shows the difference
    ['max 500 kPa (72 psi)', 'agrees'], // a whole step inwards
    ['max 100 °C (212 °F)', 'agrees'],
  ])('%s: %s', (text, verdict) => {
    expect(verdicts(text)).toEqual([verdict]);
  });
});

describe('what is no pair is left alone', () => {
  test.each([
    '20 N·m (check at 15 lbf·ft)',
    '20 N·m (15 N·m with oil)',
    'M12, 40 mm (2 in from the edge)',
    'every 500 h (30 d)',
    '22 N·m, 16 lbf·ft',
    '38 L (2 bar)',
    'use 5 gal (19 L)', // US or imperial: told as such
  ])('%s', (text) => {
    expect(verdicts(text)).toEqual([]);
  });

  test('an amount beside a range cannot be compared', () => {
    expect(verdicts('22 N·m (15–17 lbf·ft)')).toEqual(['unclear']);
  });
});

const decimal = fc
  .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 0, max: 3 }))
  .map(([digits, decimals]) => (digits / 10 ** decimals).toFixed(decimals));
const units = fc
  .constantFrom(...unitIds)
  .chain((from) =>
    fc.tuple(
      fc.constant(from),
      fc.constantFrom(...unitIds.filter((to) => kindOfUnit(to) === kindOfUnit(from))),
    ),
  );
const forms = [
  (a: string) => a,
  (a: string) => `max ${a}`,
  (a: string) => `min ${a}`,
  (a: string, b: string) => `${a}..${b}`,
  (a: string, b: string) => `${b} ± ${a}`,
] as const;

test('law: what the sheet prints in two units is never told, in either order', () => {
  fc.assert(
    fc.property(units, decimal, decimal, fc.constantFrom(...forms), ([from, to], a, b, form) => {
      fc.pre(Number(a) < Number(b));
      const first = quantity(`${form(a, b)} ${from}`);
      const text = plain(printPieces(first, { first: to }).value?.first) ?? '';
      const { value: second } = parseQuantity(text);
      expect(second).toBeDefined();
      if (second === undefined) return;
      expect(`${text}: ${judgePair(first, second)}`).toBe(`${text}: agrees`);
      // Read from the other end a safely rounded limit is the stricter one, and only that may be told.
      expect(['agrees', 'unsafe']).toContain(judgePair(second, first));
    }),
    { numRuns: 2000 },
  );
});

test('law: a value and its double, moved by a fifth, never agree', () => {
  fc.assert(
    fc.property(units, decimal, ([from, to], a) => {
      fc.pre(kindOfUnit(from) !== 'temperature' && from !== to);
      const first = quantity(`${a} ${from}`);
      const moved = quantity(`${(Number(a) * 1.2).toFixed(6)} ${from}`);
      const { value } = parseQuantity(printPieces(moved, { first: to }).value?.first ?? '');
      expect(value && judgePair(first, value)).not.toBe('agrees');
    }),
    { numRuns: 500 },
  );
});
