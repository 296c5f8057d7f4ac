import { describe, expect, test } from 'vitest';
import { describeProblem, parseQuantity } from '../../src/quantity/index.ts';

/** What is told of a value, without the words before the advice. */
const told = (text: string) =>
  parseQuantity(text).problems.map((problem) =>
    'instead' in problem ? [problem.code, problem.instead] : [problem.code],
  );

describe('a value in a form that is not read is told with what to write, and never guessed', () => {
  test.each<[string, string, string]>([
    ['22 N·m (16 lbf·ft)', 'doubled', '22 N·m'],
    ['22 N·m / 16 lbf·ft', 'doubled', '22 N·m'],
    ['max 5 bar (72 psi)', 'doubled', 'max 5 bar'],
    ['60 N·m then 90°', 'stages', '[60 N·m, 90°]'],
    ['60 N·m + 90° + 90°', 'stages', '[60 N·m + 90°, 90°]'],
    ['20 N·m; 60 N·m', 'stages', '[20 N·m, 60 N·m]'],
    ['22 +2/-1 N·m', 'unequal-tolerance', '21..24 N·m'],
    ['22 N·m (+2 -1)', 'unequal-tolerance', '21..24 N·m'],
    ['3 mm -0/+0.1', 'unequal-tolerance', '3.0..3.1 mm'],
    ['about 22 N·m', 'approximate', '22 N·m'],
    ['~22 N·m', 'approximate', '22 N·m'],
    ['22 N·m approx.', 'approximate', '22 N·m'],
    ['up to 5 bar', 'other-words', 'max 5 bar'],
    ['< 5 bar', 'other-words', 'max 5 bar'],
    ['more than 2 mm', 'other-words', 'min 2 mm'],
    ['between 20 and 24 N·m', 'other-words', '20..24 N·m'],
  ])('%s', (text, code, instead) => {
    const { value } = parseQuantity(text);
    expect(value).toBeUndefined();
    expect(told(text)).toEqual([[code, instead]]);
    // What is proposed is sound itself, or a list of sound stages.
    for (const one of instead.replace(/^\[|\]$/g, '').split(', '))
      expect(parseQuantity(one).problems).toEqual([]);
  });

  test.each([
    ['1.234,5 L', '1.234,5'],
    ["1'500 r/min", "1'500"],
    ['1:30 h', '1:30'],
    ['1e3 L', '1e3'],
    ['5. mm', '5.'],
  ])('%s is no number', (text, written) => {
    expect(parseQuantity(text).problems).toEqual([
      { code: 'number-unreadable', start: 0, end: written.length, written },
    ]);
  });

  test('what is left over is told as before', () => {
    expect(told('22 N·m dry')).toEqual([['left-over']]);
    expect(told('22 N·m (dry)')).toEqual([['left-over']]);
    expect(told('3 bar abs')).toEqual([['left-over']]);
    expect(told('M10')).toEqual([['number-unreadable']]);
  });

  test('two ends that are the same', () => {
    expect(parseQuantity('20..20 N·m').problems.map(describeProblem)[0]).toMatch(
      /to the same\. Write one value, or two that differ\.$/,
    );
  });
});

// 1 cm³ is 1 mL, 1 dm³ is 1 L (CGPM 1964; NIST SP 811 (2008), table 6).
test.each([
  ['250 cm³', '250 mL'],
  ['250 cc', '250 mL'],
  ['2 dm³', '2 L'],
])('%s is %s', (text, same) => {
  const { value } = parseQuantity(text);
  expect(value).toEqual(parseQuantity(same).value);
});
