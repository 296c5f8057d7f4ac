import { describe, expect, test } from 'vitest';
import type { UnitId } from '../../src/quantity/index.ts';
import { numberIn } from './given.ts';

/**
 * NIST SP 811 (2008), Appendix B.8 and B.9: factors as printed there, rescaled by powers of ten to the unit named. Each
 * must agree to the last digit printed.
 */
const printed: readonly (readonly [UnitId, UnitId, string])[] = [
  ['lbf·ft', 'N·m', '1.355818'],
  ['lbf·in', 'N·m', '0.1129848'],
  ['kgf·m', 'N·m', '9.80665'],
  ['psi', 'kPa', '6.894757'],
  ['bar', 'kPa', '100'],
  ['kgf/cm²', 'kPa', '98.0665'],
  ['inHg', 'kPa', '3.386389'],
  ['US gal', 'L', '3.785412'],
  ['US qt', 'L', '0.9463529'],
  ['US pt', 'L', '0.4731765'],
  ['US fl oz', 'L', '0.02957353'],
  ['imp gal', 'L', '4.54609'],
  ['imp fl oz', 'L', '0.02841306'],
  ['in', 'mm', '25.4'],
  ['ft', 'mm', '304.8'],
  ['thou', 'mm', '0.0254'],
  ['lb', 'kg', '0.4535924'],
  ['oz', 'kg', '0.02834952'],
  ['lbf', 'N', '4.448222'],
  ['kgf', 'N', '9.80665'],
  // From memory: the same tables, for the mile and the tons.
  ['mi', 'km', '1.609344'],
  ['mph', 'km/h', '1.609344'],
  ['short ton', 'kg', '907.1847'],
  ['long ton', 'kg', '1016.047'],
];

/** Full products of the exact definitions (inch, pound, standard gravity, gallons), worked in rational arithmetic. */
const exact: readonly (readonly [UnitId, UnitId, string])[] = [
  ['lbf·ft', 'N·m', '1.3558179483314004'],
  ['lbf·in', 'N·m', '0.1129848290276167'],
  ['kgf·cm', 'N·m', '0.0980665'],
  ['psi', 'kPa', '6.894757293168361'],
  ['inHg', 'kPa', '3.386388640341'],
  ['US gal', 'L', '3.785411784'],
  ['US qt', 'L', '0.946352946'],
  ['US pt', 'L', '0.473176473'],
  ['US fl oz', 'L', '0.0295735295625'],
  ['imp qt', 'L', '1.1365225'],
  ['imp pt', 'L', '0.56826125'],
  ['imp fl oz', 'L', '0.0284130625'],
  ['lb', 'kg', '0.45359237'],
  ['oz', 'kg', '0.028349523125'],
  ['lbf', 'N', '4.4482216152605'],
];

describe('published conversion factors', () => {
  test.each(printed)(
    '1 %s in %s is %s to the last printed digit (NIST SP 811 App. B)',
    (from, to, text) => {
      const decimals = text.split('.')[1]?.length ?? 0;
      expect(Math.abs(numberIn(1, from, to) - Number(text))).toBeLessThanOrEqual(
        0.5 * 10 ** -decimals * (1 + 1e-9),
      );
    },
  );

  test.each(exact)('1 %s in %s is the double nearest to the exact product', (from, to, value) => {
    expect(numberIn(1, from, to)).toBe(Number(value));
  });

  // NIST SP 811 (2008), App. B.9: t/°C = (t/°F − 32)/1.8, at its fixed points.
  test.each([
    [-40, -40],
    [32, 0],
    [68, 20],
    [212, 100],
  ])('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(numberIn(fahrenheit, '°F', '°C')).toBe(celsius);
    expect(numberIn(celsius, '°C', '°F')).toBe(fahrenheit);
  });

  // Common practice.
  test('44 lbf·ft is 59.7 N·m', () => {
    expect(numberIn(44, 'lbf·ft', 'N·m')).toBeCloseTo(59.7, 1);
  });

  test('a US pint is a sixth smaller than an imperial one, a US fluid ounce 4 % larger', () => {
    expect(numberIn(1, 'US pt', 'imp pt')).toBeCloseTo(0.8327, 4);
    expect(numberIn(1, 'US fl oz', 'imp fl oz')).toBeCloseTo(1.0408, 4);
  });
});
