import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge } from '../../site/scripts/judge.ts';

const gap = { low: 1, high: 1.5 };

describe('a reading held against its limits', () => {
  test.each([
    ['1', 'within'],
    ['1.0', 'within'],
    ['1.5', 'within'],
    ['1,25', 'within'],
    [' 1.2 ', 'within'],
    ['0.99', 'below'],
    ['-1', 'below'],
    ['−1', 'below'],
    ['1.51', 'above'],
    ['15', 'above'],
    ['', 'empty'],
    ['  ', 'empty'],
  ])('%j is %s', (typed, is) => {
    expect(judge(typed, gap).is).toBe(is);
  });

  test.each(['1.2 mm', '½', '1 1/2', '1.2.3', 'ok', '1e3', '1,234', '.'])(
    '%j is not guessed at',
    (typed) => {
      expect(judge(typed, gap).is).toBe('unclear');
    },
  );

  test('a comma that may stand for thousands is asked about, one that cannot is a decimal comma', () => {
    expect(judge('1,234', gap)).toEqual({ is: 'unclear', words: 'Write 1.234 or 1234' });
    expect(judge('0,500', gap)).toEqual({ is: 'below', limit: 1 });
  });

  test('limits on one side only', () => {
    expect(judge('-20', { low: undefined, high: -35 })).toEqual({ is: 'above', limit: -35 });
    expect(judge('-40', { low: undefined, high: -35 })).toEqual({ is: 'within' });
    expect(judge('91.9', { low: 92, high: undefined })).toEqual({ is: 'below', limit: 92 });
  });

  test('every number is below, within or above, as comparing it says', () => {
    const hundredths = fc.integer({ min: -100000, max: 100000 });
    fc.assert(
      fc.property(hundredths, hundredths, hundredths, (a, b, c) => {
        const [low, high] = [Math.min(a, b) / 100, Math.max(a, b) / 100];
        const value = c / 100;
        const expected = value < low ? 'below' : value > high ? 'above' : 'within';
        expect(judge(value.toFixed(2), { low, high }).is).toBe(expected);
      }),
    );
  });
});
