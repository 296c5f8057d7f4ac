import { describe, expect, test } from 'vitest';
import { findQuantities, printAsWritten } from '../../src/quantity/index.ts';
import { plain } from './given.ts';

function found(prose: string): (string | undefined)[] {
  return findQuantities(prose).map(({ start, end, quantity, problems }) =>
    quantity && problems.length === 0
      ? plain(printAsWritten(quantity))
      : `<${prose.slice(start, end)}> ${problems.map(({ code }) => code).join(' ')}`,
  );
}

describe('quantities in prose', () => {
  test.each([
    ['Tighten to 44 lbf·ft (60 N·m).', ['44 lbf·ft', '60 N·m']],
    ['Tighten to 60 N·m/44 lbf·ft.', ['60 N·m', '44 lbf·ft']],
    ['Torque to 20-24 N·m, then turn 90°.', ['20–24 N·m', '90°']],
    ['Set 1 mm to 2 mm; see the plate.', ['1–2 mm']],
    ['Tighten to 22 N·m - 3 mm gap.', ['22 N·m', '3 mm']],
    ['60 N·m + 90°, then back off 1/4 turn.', ['60 N·m + 90°', '1/4 turn']],
    ['Back off by 2 turns.', ['2 turns']],
    ['Wait 3 min. Pull 5 m of hose out.', ['3 min', '5 m']],
    ['The gap is 3/4 in (19 mm).', ['3/4 in', '19 mm']],
    ['Cut it to 3 in.', ['3 in']],
    ['Maximum of 5 bar, at least 2 mm, max. 80 °C', ['max 5 bar', 'min 2 mm', 'max 80 °C']],
    ['Wait 10 minutes at −10 °C to 40 °C.', ['10 min', '−10 to 40 °C']],
    ['Reduce from 5 to 2 bar.', ['2 bar']],
    ['Mix 50 % / 50% by volume', ['50 %', '50 %']],
    ['M10 x 1.5 mm', ['1.5 mm']],
    ['Add 10 lb in small amounts', ['10 lb']],
    ['Bolts 4 and 5: 22 N·m', ['22 N·m']],
  ])('%s', (prose, wanted) => {
    expect(found(prose)).toEqual(wanted);
  });

  test.each([
    ['Add 1,5 L of oil.', ['<1,5 L> decimal-comma']],
    ['Add 5 gal of fuel.', ['<5 gal> unit-ambiguous']],
    ['Turn ½ turn more', ['<½ turn> vulgar-fraction']],
    ['Tighten to 22 Nm.', ['<22 Nm> unit-spelling']],
    ['Run at 1500 rpm for 2 h', ['<1500 rpm> unit-spelling', '2 h']],
    ['Use the 3/4" drive from "box 3" now', ['<3/4"> unit-spelling']],
  ])('%s is told', (prose, wanted) => {
    expect(found(prose)).toEqual(wanted);
  });

  test.each([
    'At 10:30 do step 3 with M12 bolts of class 8.8.',
    'Place 3 in the box.',
    'Push the other 3 in.',
    'Hold 3 in one hand and 2 in the other.',
    'See step 3 m, figure 12 h and table 4 s.',
    'Steps 3 to 5 min',
    'Part 123-456 m, order 555-1234 L, dated 2024-05-03 and 03.05.2024.',
    'M8×30 mm bolt, version 1.2.3 m, 4x5 mm',
    'Steps 1 and 2 turn the shaft 2 turns freely.',
    'Use a 12 pt socket and 3 C clips.',
    'Unbolt the 4 feet.',
    'At rev 3 m the label "item 3" changed.',
    'A 5 m-long hose, a 3 L-shaped bracket.',
    'For step 3 500 mL is enough.',
    'Fit 4 bolts and 2 nuts. Use 12 V at 10 A.',
    'N·m, lbf·ft and no number',
    'x3 mm y2 L',
    '',
  ])('nothing is seen in: %s', (prose) => {
    expect(found(prose)).toEqual([]);
  });

  test('offsets point at the text', () => {
    const prose = 'Set to max 5 bar now, 22N·m after.';
    expect(findQuantities(prose).map(({ start, end }) => prose.slice(start, end))).toEqual([
      'max 5 bar',
      '22N·m',
    ]);
  });

  test('a long text takes time in proportion', () => {
    const line =
      'Tighten the 8 bolts M12 to 44 lbf·ft (60 N·m) at 10:30, max 5 bar, 3 in the box. ';
    expect(findQuantities(line.repeat(3000))).toHaveLength(9000);
  });
});
