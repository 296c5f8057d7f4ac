import { expect, test } from 'vitest';
import {
  defaultUnitPolicy,
  parseQuantity,
  printByPolicy,
  printedLimits,
  unitPolicy,
} from '../../src/quantity/index.ts';

const limits = (text: string, policy = defaultUnitPolicy) => {
  const { value } = parseQuantity(text);
  if (value === undefined) throw new Error(`${text} is no quantity`);
  return printedLimits(value, policy);
};

test.each([
  ['1.0..1.5 mm', { unit: 'mm', low: 1, high: 1.5 }],
  ['22.1 ± 0.2 mm', { unit: 'mm', low: 21.9, high: 22.3 }],
  ['20 mm ± 5 %', { unit: 'mm', low: 19, high: 21 }],
  ['max 6.0 mm', { unit: 'mm', low: undefined, high: 6 }],
  ['min 92 mm', { unit: 'mm', low: 92, high: undefined }],
  ['max -35 °C', { unit: '°C', low: undefined, high: -35 }],
])('the limits of %s', (text, expected) => {
  expect(limits(text)).toEqual(expected);
});

test('a plain value leaves open how close is close enough', () => {
  expect(limits('5 mm')).toBeUndefined();
  expect(limits('60 N·m + 90°')).toBeUndefined();
});

test('the limits are those that the sheet prints, in its first unit, rounded to the safe side', () => {
  const { value: policy } = unitPolicy({ pressure: ['psi', 'bar'] });
  const written = parseQuantity('max 5 bar').value;
  if (written === undefined) throw new Error('no quantity');
  // 5 bar is 72.5 psi by the factor of NIST SP 811 (2008), App. B: a maximum is rounded down.
  expect(printByPolicy(written, policy)).toBe('max\u00a072\u00a0psi (max\u00a05\u00a0bar)');
  expect(limits('max 5 bar', policy)).toEqual({ unit: 'psi', low: undefined, high: 72 });
});
