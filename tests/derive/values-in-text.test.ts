import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundValues, valuesInText } from '../../src/derive/index.ts';
import { unitPolicy } from '../../src/quantity/index.ts';

const { value: policy } = unitPolicy({
  torque: ['N·m', 'lbf·ft'],
  pressure: ['bar', 'psi'],
  time: ['min', 'h'],
  rotation: ['r/min'],
});
/** With plain spaces, so that the expectation can be read. */
const printed = (text: string): string => valuesInText(text, policy).replaceAll('\u00a0', ' ');

describe('values in running text', () => {
  /* Factors by NIST SP 811 (2008), Appendix B.8: 1 lbf·ft = 1.355 818 N·m, 1 in = 25.4 mm, 1 psi = 6.894 757 kPa; °F = 1.8 °C + 32. */
  test.each([
    ['Set the wrench to 110 N·m.', 'Set the wrench to 110 N·m (81 lbf·ft).'],
    ['a tread deeper than 2 mm', 'a tread deeper than 2 mm (0.08 in)'],
    ['warmer than 40 °C', 'warmer than 40 °C (104 °F)'],
    ['until the gauge shows 160 bar', 'until the gauge shows 160 bar (2320 psi)'],
    ['Torque to 16 lbf·ft now.', 'Torque to 16 lbf·ft (22 N·m) now.'],
    ['Leave 10..12 mm of slack', 'Leave 10–12 mm (0.40–0.47 in) of slack'],
    ['Leave at least 3 mm free', 'Leave at least 3 mm (0.12 in) free'],
    ['(the gap is 1.5 mm here)', '(the gap is 1.5 mm [0.059 in] here)'],
    ['Push 2 mm, then pull 3 mm.', 'Push 2 mm (0.08 in), then pull 3 mm (0.12 in).'],
  ])('%s', (text, expected) => expect(printed(text)).toBe(expected));

  test.each([
    'at 20 N·m (15 lbf·ft)',
    'at 20 N·m (15 lbf·ft, dry)',
    'at 20 N·m / 15 lbf·ft',
    'at 20 N·m = 15 lbf·ft',
    'Wait 10 min, then 5 s.',
    'Turn by 90°.',
    'Mix at 50 %.',
    'Idle at 900 r/min.',
    'Set 200 kPa.',
    'Torque to 22 Nm.',
    'The M8 bolts of step 3 hold it.',
    'Nothing to see',
  ])('%s: no second unit', (text) => expect(printed(text)).toBe(text));

  // 5 bar = 72.52 psi (1 psi = 6.894 757 kPa, NIST SP 811, App. B.8): a maximum is rounded down, a minimum up.
  test('the second unit of a limit is rounded the safe way', () => {
    const pressures = unitPolicy({ pressure: ['bar', 'psi'] }).value;
    const shown = (text: string) => valuesInText(text, pressures).replaceAll('\u00a0', ' ');
    expect(shown('Let in max 5 bar.')).toBe('Let in max 5 bar (72 psi).');
    expect(shown('no more than 5 bar')).toBe('no more than 5 bar (72 psi)');
    expect(shown('at least 5 bar')).toBe('at least 5 bar (73 psi)');
    expect(shown('at 5 bar')).toBe('at 5 bar (73 psi)');
  });

  test('no line breaks between a number and its unit, second unit or not', () => {
    expect(valuesInText('Wait 10 min at\n2 mm.', policy)).toBe(
      'Wait 10\u00a0min at\n2\u00a0mm (0.08\u00a0in).',
    );
    expect(boundValues('large, 50 to 300 N·m')).toBe('large, 50\u00a0to\u00a0300\u00a0N·m');
  });

  test('printing what is printed already changes nothing more', () => {
    const words = fc.constantFrom('set', '20 N·m', '3 mm', '(', ')', '15 lbf·ft', '/', 'and', '5');
    fc.assert(
      fc.property(fc.array(words, { maxLength: 8 }), (parts) => {
        const [open, close] = [parts.indexOf('('), parts.indexOf(')')];
        fc.pre(open < 0 && close < 0);
        const once = valuesInText(parts.join(' '), policy);
        expect(valuesInText(once, policy)).toBe(once);
      }),
    );
  });
});
