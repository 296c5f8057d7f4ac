import { describe, expect, test } from 'vitest';
import { bookOf, sheetIn } from '../render/linked-manual.ts';
import { pumpManual } from '../render/pump-manual.ts';

const nbsp = '\u00a0';

/** A manual with one circuit and nothing to do. */
function mixOf(capacity: string, mix: Record<string, string>, volume = '[L, US gal]') {
  const book = bookOf({
    'manual.yaml': `title: Mixes\nunits: { volume: ${volume} }\n`,
    'machines/m.yaml': `machine: m\nname: M\ncircuits:\n  c: { name: coolant, fluid: glycol, capacity: "${capacity}", mix: ${JSON.stringify(mix)} }\n`,
  });
  return book.fluids[0]?.mix.map(({ volume }) => volume.replaceAll(nbsp, ' '));
}

describe('a mix', () => {
  // Common arithmetic: the share of the capacity by volume.
  test('is worked out from shares and capacity', () => {
    expect(mixOf('6 L', { antifreeze: '50 %', water: '50 %' })).toEqual([
      '3 L (0.8 US gal)',
      '3 L (0.8 US gal)',
    ]);
  });

  test('is printed finer than the capacity where it does not come out even', () => {
    expect(mixOf('5 L', { antifreeze: '50 %' }, '[L]')).toEqual(['2.5 L']);
    expect(mixOf('38 L', { antifreeze: '60 %', water: '40 %' }, '[L]')).toEqual([
      '22.8 L',
      '15.2 L',
    ]);
    expect(mixOf('7.4 L', { antifreeze: '33 %' }, '[L]')).toEqual(['2.44 L']);
  });

  // 1 US gal = 3.785411784 L (NIST SP 811 (2008), B.8), so 4 US gal at 25 % is 1 US gal, 3.8 L.
  test('is converted from a capacity in another unit', () => {
    expect(mixOf('4 US gal', { antifreeze: '25 %' }, '[US gal, L]')).toEqual(['1 US gal (3.8 L)']);
  });

  test('shows shares that do not add up as they are', () => {
    expect(mixOf('10 L', { antifreeze: '30 %', additive: '5 %' }, '[L]')).toEqual(['3 L', '0.5 L']);
  });
});

describe('the torque chart', () => {
  const rows = bookOf(pumpManual).torques;

  // 1 lbf·ft = 1.355818 N·m (NIST SP 811 (2008), B.8): 45 N·m = 33.19 lbf·ft, 25 N·m = 18.44, 60 N·m = 44.25, 120 N·m = 88.51.
  test('has every fastener with a torque, used or not, in both units', () => {
    expect(rows.map((row) => [row.item.text, row.count, row.stages])).toEqual([
      ['cover bolts', 8, [`45${nbsp}N·m (33${nbsp}lbf·ft)`]],
      ['drain plug', 1, [`25${nbsp}N·m (18${nbsp}lbf·ft)`]],
      [
        'hub nut',
        1,
        [
          `60${nbsp}N·m (44${nbsp}lbf·ft)`,
          `back off 1/2${nbsp}turn`,
          `120${nbsp}N·m + 90° (89${nbsp}lbf·ft + 90°)`,
        ],
      ],
    ]);
  });

  test('says strength and threads', () => {
    expect(rows.map((row) => [row.thread, row.strength, row.threads])).toEqual([
      ['M10', 'class 8.8', undefined],
      ['M14', undefined, undefined],
      ['M16', 'class 10.9', 'threads oiled'],
    ]);
  });

  test('says in which sheets a fastener is used by their own text', () => {
    expect(rows.map((row) => row.usedIn.map(({ text }) => text))).toEqual([
      ['Replace the impeller'],
      ['Drain the coolant'],
      ['Replace the impeller'],
    ]);
  });

  test('lists on a sheet what performed procedures torque as well', () => {
    const sheet = sheetIn(bookOf(pumpManual), 'replace-impeller');
    expect(sheet.torques.map((row) => row.item.text)).toEqual([
      'drain plug',
      'hub nut',
      'cover bolts',
    ]);
  });

  test('has ids that are unique in the manual', () => {
    expect(rows.map((row) => row.anchor)).toEqual([
      'pump-cover-bolt',
      'pump-drain-plug',
      'pump-hub-nut',
    ]);
  });
});
