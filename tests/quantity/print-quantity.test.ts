import { describe, expect, test } from 'vitest';
import {
  defaultUnitPolicy,
  describeProblem,
  piecesByPolicy,
  printByPolicy,
  printQuantity,
  unitPolicy,
} from '../../src/quantity/index.ts';
import { plain, quantity } from './given.ts';

const byDefault = (text: string) => plain(printByPolicy(quantity(text), defaultUnitPolicy));

describe('printing', () => {
  test('a no-break space stands between number and unit, none before the degree of angle', () => {
    expect(printQuantity(quantity('60 N·m + 90°'), { first: 'N·m', second: 'lbf·ft' })).toEqual({
      value: '60\u00a0N·m + 90° (44\u00a0lbf·ft + 90°)',
      problems: [],
    });
  });

  test("the author's own digits are never changed in the author's own unit", () => {
    const units = { first: 'N·m', second: 'lbf·ft' } as const;
    expect(plain(printQuantity(quantity('60.00 N·m'), units).value)).toBe(
      '60.00 N·m (44.25 lbf·ft)',
    );
    expect(plain(printQuantity(quantity('44 lbf·ft'), units).value)).toBe('60 N·m (44 lbf·ft)');
  });

  test('a unit of another kind is told', () => {
    const { value, problems } = printQuantity(quantity('60 N·m'), { first: 'N·m', second: 'psi' });
    expect(value).toBeUndefined();
    expect(problems.map(describeProblem)).toEqual([
      '“psi” measures a pressure, and the quantity is a torque.',
    ]);
  });

  test.each([
    ['22 ± 2 N·m', '22 ± 2 N·m (16.2 ± 1.4 lbf·ft)'],
    ['20..24 N·m', '20–24 N·m (14.8–17.7 lbf·ft)'],
    ['22 N·m ± 10 %', '22 N·m ± 10 % (16.2 ± 1.5 lbf·ft)'],
    ['max 500 kPa', 'max 500 kPa (max 72.5 psi)'],
    ['38 L', '38 L (40 US qt)'],
    ['-10..5 °C', '−10 to 5 °C (14–41 °F)'],
    ['3/4 in', '19 mm (3/4 in)'],
    ['1/4..1/2 in', '6.4–12.7 mm (1/4 to 1/2 in)'],
    ['1/4 turn', '1/4 turn'],
    ['1 turn', '1 turn'],
    ['2 turns', '2 turns'],
    ['1-1/2 turns', '1-1/2 turns'],
    ['30 min', '30 min'],
    ['50 %', '50 %'],
    ['1500 r/min', '1500 r/min'],
    ['250 mL', '250 mL (8.45 US fl oz)'],
    ['5 thou', '0.13 mm (5 thou)'],
  ])('%s by the default policy is %s', (text, wanted) => {
    expect(byDefault(text)).toBe(wanted);
  });

  test('the pieces come apart for a sheet that sets them in two places', () => {
    expect(piecesByPolicy(quantity('60 N·m'), defaultUnitPolicy)).toEqual({
      first: '60\u00a0N·m',
      second: '44\u00a0lbf·ft',
    });
  });
});

describe("a manual's unit policy", () => {
  test('overrides some kinds and leaves the others', () => {
    const { value, problems } = unitPolicy({ torque: ['lbf·ft', 'N·m'], volume: 'L', time: 'min' });
    expect(problems).toEqual([]);
    expect(value).toEqual({
      ...defaultUnitPolicy,
      torque: ['lbf·ft', 'N·m'],
      volume: ['L'],
      time: ['min'],
    });
    expect(plain(printByPolicy(quantity('2 h'), value))).toBe('120 min');
  });

  test('tells what it cannot use, and the default stands', () => {
    const { value, problems } = unitPolicy({
      torque: ['N·n'],
      volume: ['gal'],
      length: ['psi'],
      mass: ['kg', 'lb', 'oz'],
      pressure: [],
      speed: ['KM/H'],
      weight: 'kg',
    });
    expect(value).toEqual({ ...defaultUnitPolicy, speed: ['km/h'] });
    expect(problems.map(describeProblem)).toEqual([
      '“weight” is not a kind of quantity. The kinds are torque, volume, length, pressure, mass, force, temperature, angle, rotation, speed, time, share.',
      'The unit “N·n” for torque is not known. Did you mean “N·m”?',
      'The unit “gal” for volume is not known. Did you mean “US gal” or “imp gal”?',
      '“psi” measures a pressure and cannot be the unit for length.',
      '0 units are given for pressure. Give one, or a first and a second.',
      '3 units are given for mass. Give one, or a first and a second.',
      'The unit “KM/H” for speed is understood; the standard spelling is “km/h”.',
    ]);
  });
});

// 20 g / 28.349523125 g = 0.705 oz; 5 mL / 29.5735295625 mL = 0.169 US fl oz (factors of NIST SP 811, App. B.8).
test.each([
  ['20 g', '20 g (0.71 oz)'],
  ['5 mL', '5 mL (0.17 US fl oz)'],
  ['2 kg', '2 kg (4.4 lb)'],
])('%s in the small unit of the second system', (text, printed) => {
  expect(byDefault(text)).toBe(printed);
});
