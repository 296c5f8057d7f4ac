import { describe, expect, test } from 'vitest';
import { printPieces, type UnitId } from '../../src/quantity/index.ts';
import { decimalText, fromDecimal, roundTo } from '../../src/quantity/rational.ts';
import { plain, quantity } from './given.ts';

function printed(text: string, unit: UnitId): string | undefined {
  return plain(printPieces(quantity(text), { first: unit }).value?.first);
}

// NIST SP 811 (2008), B.7.1: an exact half goes to the even digit.
describe('rounding a number', () => {
  test.each([
    ['6.9749515', -2, '6.97'],
    ['6.9749515', -4, '6.9750'],
    ['6.9749515', -6, '6.974952'],
    ['6.9749505', -6, '6.974950'],
  ])('%s at 10^%d is %s (SP 811 B.7.1)', (number, place, wanted) => {
    expect(decimalText(roundTo(fromDecimal(number), place, 'half-even'), place)).toBe(wanted);
  });

  test.each([
    ['-2.5', 'half-even', '-2'],
    ['-3.5', 'half-even', '-4'],
    ['-2.1', 'down', '-3'],
    ['-2.9', 'up', '-2'],
    ['2.0', 'up', '2'],
  ] as const)('%s rounded %s is %s', (number, mode, wanted) => {
    expect(decimalText(roundTo(fromDecimal(number), 0, mode), 0)).toBe(wanted);
  });
});

describe('digits of a converted amount', () => {
  test.each<[string, UnitId, string, string]>([
    ['36 ft', 'm', '11.0 m', 'NIST SP 811 (2008), B.7.2'],
    ['36 in', 'cm', '91 cm', 'NIST LC 1137'],
    ['40.1 in', 'cm', '101.9 cm', 'NIST LC 1137'],
    ['7-1/2 in', 'mm', '190 mm', 'NIST PS 20-20 App. B1, half to even'],
    ['11 mi', 'km', '18 km', 'NIST SP 1038 section 4.4, from memory'],
    ['66 mi', 'km', '106 km', 'NIST SP 1038 section 4.4, from memory'],
    ['8 ft', 'm', '2.4 m', 'NIST SP 1038 section 4.4, from memory'],
    ['44 lbf·ft', 'N·m', '60 N·m', 'common practice'],
    ['44.0 lbf·ft', 'N·m', '59.7 N·m', 'common practice'],
    ['60 N·m', 'lbf·ft', '44 lbf·ft', 'common practice'],
    ['3/4 in', 'mm', '19 mm', 'common practice'],
    ['1/2 in', 'mm', '13 mm', 'common practice'],
    ['3/8 in', 'mm', '9.5 mm', 'common practice'],
    ['1/16 in', 'mm', '1.6 mm', 'common practice'],
    ['1/5 turn', '°', '72°', 'a turn is 360°'],
    ['5 N·m', 'lbf·ft', '3.7 lbf·ft', 'one digit: 4 would be 8 % off'],
    ['2 h', 'min', '120 min', 'one digit: 100 would be 17 % off'],
    ['1 US gal', 'L', '3.8 L', 'one digit: 4 would be 6 % off'],
    ['35 psi', 'kPa', '240 kPa', 'common practice'],
    ['80 °C', '°F', '176 °F', 'the definition of the scales'],
  ])('%s in %s is %s (%s)', (text, unit, wanted) => {
    expect(printed(text, unit)).toBe(wanted);
  });

  test('an exact half is found although a double cannot hold it', () => {
    // 0.75 in is exactly 19.05 mm; the nearest double is 19.050000000000000710 and would round up.
    expect(printed('0.75 in', 'mm')).toBe('19.0 mm');
  });
});

describe('limits are never rounded the unsafe way', () => {
  test.each([
    ['max 5 bar', 'psi', 'max 72 psi'], // 72.52
    ['min 5 bar', 'psi', 'min 73 psi'],
    ['max 60 N·m', 'lbf·ft', 'max 44 lbf·ft'], // 44.25
    ['min 60 N·m', 'lbf·ft', 'min 44.3 lbf·ft'], // 45 would give away 0.75 lbf·ft
    ['max 1 mm', 'in', 'max 0.039 in'], // 0.03937
    ['min 2 mm', 'in', 'min 0.08 in'], // 0.07874
    ['max 100 °C', '°F', 'max 212 °F'],
    ['max -10 °C', '°F', 'max 14 °F'],
    ['max -11 °F', '°C', 'max −24 °C'], // -23.89
    ['20..24 N·m', 'lbf·ft', '14.8–17.7 lbf·ft'], // 14.751 to 17.701
    ['22 ± 2 N·m', 'lbf·ft', '16.2 ± 1.4 lbf·ft'], // 16.226 ± 1.475
    ['22 N·m ± 10 %', 'lbf·ft', '16.2 ± 1.5 lbf·ft'], // 16.226 ± 1.623
    ['80 ± 5 °C', '°F', '176 ± 9 °F'],
    ['1.0..1.5 mm', 'in', '0.040–0.059 in'], // 0.03937 to 0.05906
    ['0..5 mm', 'in', '0.000–0.196 in'], // 0.19685; 0.19 would give away 3.5 %
    ['-0.1..0.2 mm', 'in', '−0.0039 to 0.0078 in'],
    ['1..13 ft', 'mm', '310–3960 mm'], // 304.8 to 3962.4; 400 would give away a third of the foot
    ['22 ± 0 N·m', 'lbf·ft', '16 ± 0 lbf·ft'],
  ] as const)('%s in %s is %s', (text, unit, wanted) => {
    expect(printed(text, unit)).toBe(wanted);
  });
});
