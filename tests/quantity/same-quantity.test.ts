import { describe, expect, test } from 'vitest';
import { canonical, convert, sameQuantity, toUcum } from '../../src/quantity/index.ts';
import { quantity } from './given.ts';

describe('whether two quantities agree', () => {
  test.each([
    ['60 N·m', '44 lbf·ft'],
    ['60 N·m', '60.0 N·m'],
    ['44 lbf·ft', '59.7 N·m'],
    ['22 ± 2 N·m', '20..24 N·m'],
    ['50 N·m ± 10 %', '45..55 N·m'],
    ['20..24 N·m', '14.8..17.7 lbf·ft'],
    ['max 5 bar', 'max 72 psi'],
    ['3/4 in', '19 mm'],
    ['36 ft', '11.0 m'],
    ['212 °F', '100 °C'],
    ['1/4 turn', '90°'],
    ['60 N·m + 90°', '44 lbf·ft + 1/4 turn'],
    ['500 mL', '0.5 L'],
    ['1/2 L', '0.5 L'],
  ])('%s and %s do', (a, b) => {
    expect(sameQuantity(quantity(a), quantity(b))).toBe(true);
    expect(sameQuantity(quantity(b), quantity(a))).toBe(true);
  });

  test.each([
    ['62 N·m', '44 lbf·ft'],
    ['60 N·m', '61 N·m'],
    ['60 N·m', '60 lbf·ft'],
    ['22 N·m', '22 ± 2 N·m'],
    ['22 ± 2 N·m', '20..25 N·m'],
    ['max 5 bar', 'min 5 bar'],
    ['max 5 bar', '5 bar'],
    ['3/4 in', '20 mm'],
    ['60 N·m + 90°', '60 N·m'],
    ['60 N·m + 90°', '60 N·m + 120°'],
    ['1 US pt', '1 imp pt'],
    ['5 N', '5 N·m'],
  ])('%s and %s do not', (a, b) => {
    expect(sameQuantity(quantity(a), quantity(b))).toBe(false);
    expect(sameQuantity(quantity(b), quantity(a))).toBe(false);
  });
});

test('the canonical form is bounds in the base unit', () => {
  expect(canonical(quantity('5 ± 1 bar'))).toEqual({
    kind: 'pressure',
    low: { value: 400, step: 100 },
    high: { value: 600, step: 100 },
  });
  expect(canonical(quantity('max 212 °F'))).toEqual({
    kind: 'temperature',
    high: { value: 100, step: 5 / 9 },
  });
  expect(canonical(quantity('60 N·m + 1/4 turn')).angle?.low?.value).toBe(90);
});

describe('conversion', () => {
  test('a unit of another kind is a typed result', () => {
    expect(convert(quantity('60 N·m'), 'kPa')).toEqual({
      problems: [{ code: 'kind-mismatch', kind: 'torque', unit: 'kPa', unitKind: 'pressure' }],
    });
  });

  test('a temperature tolerance has no offset', () => {
    expect(convert(quantity('100 ± 5 °C'), '°F').value).toMatchObject({
      amount: { value: 212 },
      tolerance: { value: 9 },
    });
  });

  test('of a torque with an angle the torque is converted', () => {
    expect(convert(quantity('10 kgf·m + 90°'), 'N·m').value).toMatchObject({
      torque: { unit: 'N·m', amount: { value: 98.0665 } },
      angle: { unit: '°', amount: { value: 90 } },
    });
  });
});

test.each([
  ['22 N·m', { form: 'single', value: 22, unit: 'N.m' }],
  ['22 ± 2 N·m', { form: 'tolerance', value: 22, low: 20, high: 24, unit: 'N.m' }],
  ['22 N·m ± 10 %', { form: 'tolerance', value: 22, low: 19.8, high: 24.2, unit: 'N.m' }],
  ['20..24 lbf·ft', { form: 'range', low: 20, high: 24, unit: '[lbf_av].[ft_i]' }],
  ['max 5 bar', { form: 'max', high: 5, unit: 'bar' }],
  ['min -40 °F', { form: 'min', low: -40, unit: '[degF]' }],
  [
    '60 N·m + 1/4 turn',
    {
      form: 'torque-angle',
      torque: { form: 'single', value: 60, unit: 'N.m' },
      angle: { form: 'single', value: 0.25, unit: 'circ' },
    },
  ],
])('%s for machines', (text, wanted) => {
  expect(toUcum(quantity(text))).toEqual(wanted);
});
