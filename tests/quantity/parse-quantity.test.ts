import { describe, expect, test } from 'vitest';
import {
  describeProblem,
  parseQuantity,
  printAsWritten,
  type UnitId,
} from '../../src/quantity/index.ts';
import { plain, quantity } from './given.ts';

/** The stretch of the text that each problem points at, with its code. */
function told(text: string): string[] {
  return parseQuantity(text).problems.map(
    ({ code, start, end }) => `${code} <${text.slice(start, end)}>`,
  );
}

describe('forms', () => {
  test('a single amount keeps its written digits', () => {
    expect(quantity('1.50 L')).toEqual({
      form: 'single',
      unit: 'L',
      amount: { value: 1.5, step: 0.01, written: '1.50' },
    });
  });

  test.each(['22 ± 2 N·m', '22 +/- 2 N·m', '22±2 N·m', '22 N·m ± 2 N·m', '22 N·m ± 2'])(
    '%s is a tolerance',
    (text) => {
      expect(quantity(text)).toEqual({
        form: 'tolerance',
        unit: 'N·m',
        amount: { value: 22, step: 1, written: '22' },
        by: 'amount',
        tolerance: { value: 2, step: 1, written: '2' },
      });
    },
  );

  test.each(['22 N·m ± 10 %', '22 ± 10 % N·m', '22 N·m ±10%'])(
    '%s is a tolerance by share',
    (text) => {
      expect(quantity(text)).toMatchObject({
        form: 'tolerance',
        unit: 'N·m',
        amount: { value: 22 },
        by: 'share',
        tolerance: { value: 10 },
      });
    },
  );

  test.each(['50 ± 5 %', '50 % ± 5 %'])('%s is a tolerance in percentage points', (text) => {
    expect(quantity(text)).toMatchObject({ unit: '%', by: 'amount', tolerance: { value: 5 } });
  });

  test.each([
    '20..24 N·m',
    '20...24 N·m',
    '20 to 24 N·m',
    '20–24 N·m',
    '20 – 24 N·m',
    '20-24 N·m',
    '20 N·m..24 N·m',
  ])('%s is a range', (text) => {
    expect(quantity(text)).toMatchObject({
      form: 'range',
      unit: 'N·m',
      low: { value: 20 },
      high: { value: 24 },
    });
  });

  test.each([
    'max 5 bar',
    'max. 5 bar',
    'maximum 5 bar',
    'at most 5 bar',
    '≤ 5 bar',
    '<=5 bar',
    '5 bar max',
  ])('%s is an upper limit', (text) => {
    expect(quantity(text)).toMatchObject({ form: 'limit', limit: 'max', unit: 'bar' });
  });

  test.each(['min 2 mm', 'at least 2 mm', '≥ 2 mm', 'not less than 2 mm', '2 mm min'])(
    '%s is a lower limit',
    (text) => {
      expect(quantity(text)).toMatchObject({ form: 'limit', limit: 'min', unit: 'mm' });
    },
  );

  test('min is a limit before a number and minutes after one', () => {
    expect(quantity('3 min')).toMatchObject({ form: 'single', unit: 'min' });
    expect(quantity('min 3 min')).toMatchObject({ form: 'limit', limit: 'min', unit: 'min' });
  });

  test('a torque with an angle', () => {
    expect(quantity('60 ± 5 N·m + 90°')).toMatchObject({
      form: 'torque-angle',
      torque: { form: 'tolerance', unit: 'N·m' },
      angle: { form: 'single', unit: '°', amount: { value: 90 } },
    });
    expect(quantity('60 N·m + 1/4 turn')).toMatchObject({ angle: { unit: 'turn' } });
  });

  test.each([
    ['1/4 turn', 0.25, '1/4'],
    ['3/4 in', 0.75, '3/4'],
    ['1-1/2 in', 1.5, '1-1/2'],
    ['1 1/2 in', 1.5, '1-1/2'],
    ['1 500 r/min', 1500, '1500'],
    ['−40 °C', -40, '-40'],
    ['22N·m', 22, '22'],
  ])('%s is %d, kept as %s', (text, value, written) => {
    expect(quantity(text)).toMatchObject({ amount: { value, written } });
  });

  test('a signed range', () => {
    expect(quantity('-0.1..+0.2 mm')).toMatchObject({ low: { value: -0.1 }, high: { value: 0.2 } });
    expect(quantity('-10 to -5 °C')).toMatchObject({ low: { value: -10 }, high: { value: -5 } });
  });
});

describe('spellings', () => {
  test.each<[string, UnitId]>([
    ...['Nm', 'N-m', 'N.m', 'N*m', 'N m', 'newton metres'].map((s): [string, UnitId] => [s, 'N·m']),
    ...['ft-lb', 'ft lbs', 'lb-ft', 'lbs ft', 'ft·lbf', 'FT-LBS', 'foot-pounds', 'ft.lbf'].map(
      (s): [string, UnitId] => [s, 'lbf·ft'],
    ),
    ...['in-lb', 'inch pounds', 'in lbs', 'lb-in'].map((s): [string, UnitId] => [s, 'lbf·in']),
    ...['kg-m', 'kgm', 'kgf.m'].map((s): [string, UnitId] => [s, 'kgf·m']),
    ...['litre', 'litres', 'liter', 'l', 'ltr'].map((s): [string, UnitId] => [s, 'L']),
    ...['degC', 'C', '℃', 'degrees Celsius'].map((s): [string, UnitId] => [s, '°C']),
    ...['"', 'inches', 'inch', '”'].map((s): [string, UnitId] => [s, 'in']),
    ['deg', '°'],
    ['rpm', 'r/min'],
    ['hours', 'h'],
    ['hr', 'h'],
    ['minutes', 'min'],
    ['mins', 'min'],
    ['sec', 's'],
    ['lbs', 'lb'],
    ['kgs', 'kg'],
    ['PSI', 'psi'],
    ['Bar', 'bar'],
    ['kg/cm2', 'kgf/cm²'],
    ['US gallons', 'US gal'],
    ['imperial pints', 'imp pt'],
    ['microns', 'µm'],
  ])('“%s” is understood as %s and told', (spelling, standard) => {
    const text = `5 ${spelling}`;
    const { value, problems } = parseQuantity(text);
    expect(value).toMatchObject({ unit: standard });
    expect(problems).toEqual([
      { code: 'unit-spelling', start: 2, end: text.length, written: spelling, standard },
    ]);
  });

  test.each(['22 N⋅m', '22 N·m', '5 \u03bcm', '5 \u00b5m', '80 º', '2 turns'])(
    '%s only looks different and is no problem',
    (text) => {
      expect(parseQuantity(text)).toMatchObject({ value: { form: 'single' }, problems: [] });
    },
  );

  test.each(['mPa', 'nm', 'kn'])(
    '%s differs from a known unit by more than looks and is not guessed',
    (spelling) => {
      expect(told(`5 ${spelling}`)).toEqual([`unit-unknown <${spelling}>`]);
    },
  );
});

describe('problems', () => {
  test.each([
    ['22', 'unit-missing <22>'],
    ['20..24', 'unit-missing <24>'],
    ['22 Nmm', 'unit-unknown <Nmm>'],
    ['10 L/min', 'unit-unknown <L/min>'],
    ['5 gal', 'unit-ambiguous <gal>'],
    ['2 qt', 'unit-ambiguous <qt>'],
    ['2 pt', 'unit-ambiguous <pt>'],
    ['2 fl oz', 'unit-ambiguous <fl oz>'],
    ['3 tons', 'unit-ambiguous <tons>'],
    ['', 'number-unreadable <>'],
    ['  tight ', 'number-unreadable <tight>'],
    ['1.2.3 mm', 'number-unreadable <1.2.3>'],
    ['1/0 in', 'number-unreadable <1/0>'],
    ['1-3/2 in', 'number-unreadable <1-3/2>'],
    ['12345678901234567890 mm', 'number-unreadable <12345678901234567890>'],
    ['1,5 L', 'decimal-comma <1,5>'],
    ['1,500 r/min', 'decimal-comma <1,500>'],
    ['½ in', 'vulgar-fraction <½>'],
    ['1½ in', 'vulgar-fraction <1½>'],
    ['-5 L', 'negative <-5>'],
    ['2 ± 5 N·m', 'negative <2 ± 5 N·m>'],
    ['60 N·m + -90°', 'negative <-90°>'],
    ['24..20 N·m', 'range-reversed <24..20 N·m>'],
    ['20..20 N·m', 'range-reversed <20..20 N·m>'],
    ['20 N·m..24 lbf·ft', 'two-units <lbf·ft>'],
    ['60 mm + 90°', 'angle-misplaced <90°>'],
    ['60 N·m + 5 mm', 'angle-misplaced <5 mm>'],
    ['max 20..24 N·m', 'limit-of-several <max 20..24 N·m>'],
    ['80 °C ± 10 %', 'share-of-temperature <80 °C ± 10 %>'],
    ['1 h 30 min', 'compound <1 h 30 min>'],
    ['22 N·m dry', 'left-over <dry>'],
  ])('"%s" gives %s and no value', (text, wanted) => {
    expect(parseQuantity(text).value).toBeUndefined();
    expect(told(text)).toEqual([wanted]);
  });

  test('several problems are told at once, in order of place', () => {
    expect(told('1,5 ± ½ gal')).toEqual([
      'decimal-comma <1,5>',
      'vulgar-fraction <½>',
      'unit-ambiguous <gal>',
    ]);
  });

  test('a lone point is understood and told', () => {
    expect(parseQuantity('.5 in')).toMatchObject({
      value: { amount: { value: 0.5, written: '0.5' } },
      problems: [{ code: 'number-spelling', standard: '0.5' }],
    });
  });

  test.each(['-40 °C', '-0.3 bar', '-0.05 mm', '-2°'])('%s may be negative', (text) => {
    expect(parseQuantity(text)).toMatchObject({ value: { form: 'single' }, problems: [] });
  });

  test.each([
    ['22', '“22” has no unit. Write the unit after the number, for example “22 N·m”.'],
    ['22 Nmn', 'The unit “Nmn” is not known. Did you mean “N·m”?'],
    ['5 gal', '“gal” can mean “US gal” or “imp gal”. Write which one.'],
    ['22 Nm', 'The unit “Nm” is understood; the standard spelling is “N·m”.'],
    [
      '1,5 L',
      'The comma in “1,5” is not read, because it can stand for a decimal point or for thousands. Write “1.5”.',
    ],
    [
      '1,500 L',
      'The comma in “1,500” is not read, because it can stand for a decimal point or for thousands. Write “1500” or “1.500”.',
    ],
    ['1½ in', 'The fraction sign in “1½” is not read. Write “1-1/2”.'],
    ['-5 L', '“-5” goes below zero, and a volume cannot. Write a value of zero or more.'],
    ['24..20 N·m', 'The range runs from “24” to “20”. The first number must be the smaller.'],
    [
      '1 h 30 min',
      '“1 h 30 min” joins two numbers with two units. Write one number with one unit: “90 min”.',
    ],
  ])('"%s": %s', (text, wanted) => {
    expect(parseQuantity(text).problems.map(describeProblem)).toEqual([wanted]);
  });
});

test('what is understood is printed in the standard spelling', () => {
  const { value } = parseQuantity('22 +/- 2 Nm');
  expect(value && plain(printAsWritten(value))).toBe('22 ± 2 N·m');
});
