import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  lastRound,
  plainLength,
  settingShare,
  type TorqueTool,
  wrenchInUse,
  wrenchSetting,
} from '../../src/joint/index.ts';
import {
  isMeasureOf,
  parseQuantity,
  parseTorqueSpec,
  printQuantity,
  type Quantity,
  type Torque,
  type UnitOf,
} from '../../src/quantity/index.ts';

function quantity(text: string): Quantity {
  const { value } = parseQuantity(text);
  if (value === undefined) throw new Error(`no quantity: ${text}`);
  return value;
}

function torque(text: string): Torque {
  const value = quantity(text);
  if (!isMeasureOf(value, 'torque')) throw new Error(`no torque: ${text}`);
  return value;
}

function spec(stages: readonly string[]) {
  const { value } = parseTorqueSpec(stages);
  if (value === undefined) throw new Error(`no torque: ${stages}`);
  return value;
}

const share = (length: number, extension: number, angle: number): number =>
  settingShare({ length, extension, angle }) ?? Number.NaN;

/** T at the bolt, L of the wrench, E of the extension (back from the drive where negative), and the setting. */
describe('published worked examples of setting = T × L / (L + E), lbf·in', () => {
  test.each([
    ['US Army TM 1-1500-204-23-9, general practices, tools', 300, 10, 4, 214, 0],
    ['US Navy training manual, aviation series', 100, 12, 6, 66.7, 1],
    ['US Army TM 9-254, fig. 45', 70, 12, 2, 60, 0],
    ['FAA AC 43.13-1B, figure 7-2, E positive; from memory', 135, 10, 1.5, 117, 0],
    ['FAA AC 43.13-1B, figure 7-2, E negative; from memory', 135, 10, -1.5, 159, 0],
  ])('%s', (_, wanted, length, extension, setting, decimals) => {
    const angle = extension < 0 ? 180 : 0;
    const exact = wanted * share(length, Math.abs(extension), angle);
    expect(Number(exact.toFixed(decimals))).toBe(setting);
  });

  test('at a right angle nothing is corrected (US Navy training manual 14008)', () => {
    expect(share(400, 50, 90)).toBe(1);
  });

  test('aslant the extension counts with L + E·cos α (US Army TM 9-254, fig. 46)', () => {
    expect(share(400, 100, 60)).toBeCloseTo(400 / 450, 12);
    expect(share(400, 100, 120)).toBeCloseTo(400 / 350, 12);
  });
});

test('a longer extension in line asks for a lower setting', () => {
  const mm = fc.integer({ min: 1, max: 1000 });
  fc.assert(
    fc.property(mm, mm, mm, (length, extension, more) => {
      expect(share(length, extension + more, 0)).toBeLessThan(share(length, extension, 0));
      expect(share(length, extension, 0) * (length + extension)).toBeCloseTo(length, 6);
    }),
  );
});

test.each([
  ['a wrench of no length', 0, 50, 0],
  ['an extension of no length', 400, 0, 0],
  ['a negative length', -400, 50, 0],
  ['an extension that points back to the grip', 400, 400, 180],
])('no setting: %s', (_, length, extension, angle) => {
  expect(settingShare({ length, extension, angle })).toBeUndefined();
});

describe('the setting as it is printed', () => {
  const printed = (text: string, part: number, second?: UnitOf<'torque'>): string => {
    const units = { first: 'N·m' as const, ...(second && { second }) };
    const { value = '' } = printQuantity(wrenchSetting(torque(text), part), units);
    return value.replaceAll('\u00a0', ' ');
  };
  const inLine = share(350, 100, 0);

  test.each([
    ['60 N·m', '47 N·m (34 lbf·ft)'],
    ['max 60 N·m', 'max 46.6 N·m (max 34.4 lbf·ft)'],
    ['min 60 N·m', 'min 47 N·m (min 34.5 lbf·ft)'],
    ['20..24 N·m', '15.6–18.6 N·m (11.5–13.7 lbf·ft)'],
  ])('%s', (text, setting) => {
    expect(printed(text, inLine, 'lbf·ft')).toBe(setting);
  });

  test('exactly a whole number stays one, whichever way it would be rounded', () => {
    expect(printed('max 70 lbf·ft', share(12, 2, 0))).toMatch(/^max 81/);
    expect(printed('min 70 N·m', share(12, 2, 0))).toBe('min 60 N·m');
    expect(printed('max 70 N·m', share(12, 2, 0))).toBe('max 60 N·m');
  });

  test('never leads beyond the ends of what is allowed at the bolt', () => {
    const amounts = fc.tuple(fc.integer({ min: 5, max: 400 }), fc.integer({ min: 1, max: 60 }));
    const part = fc.tuple(fc.integer({ min: 150, max: 900 }), fc.integer({ min: 20, max: 150 }));
    fc.assert(
      fc.property(amounts, part, ([low, width], [length, extension]) => {
        const at = share(length, extension, 0);
        const range = printed(`${low}..${low + width} N·m`, at);
        const [least = 0, most = 0] = (range.match(/[\d.]+/g) ?? []).map(Number);
        expect(least / at).toBeGreaterThanOrEqual(low - 1e-6);
        expect(most / at).toBeLessThanOrEqual(low + width + 1e-6);
        const [middle = 0, play = 0] = (
          printed(`${low + width} ± ${width} N·m`, at).match(/[\d.]+/g) ?? []
        ).map(Number);
        expect((middle - play) / at).toBeGreaterThanOrEqual(low - 1e-6);
        expect((middle + play) / at).toBeLessThanOrEqual(low + 2 * width + 1e-6);
      }),
    );
  });
});

describe('the tools of an action', () => {
  const tool = (id: string, given: { length?: string; extension?: string }): TorqueTool => ({
    id,
    length: given.length === undefined ? undefined : quantity(given.length),
    extension: given.extension === undefined ? undefined : quantity(given.extension),
  });
  const wrench = tool('wrench', { length: '350 mm' });
  const crowfoot = tool('crowfoot', { extension: '50 mm' });
  const none = tool('gloves', {});

  test('give the share, in whatever units they are measured', () => {
    expect(wrenchInUse([none, wrench, crowfoot], undefined)).toEqual({
      value: { wrench: 'wrench', extension: 'crowfoot', angle: 0, share: 0.875 },
    });
    const inch = tool('foot', { extension: '2 in' });
    expect(wrenchInUse([inch, tool('w', { length: '14 in' })], undefined).value?.share).toBeCloseTo(
      0.875,
      12,
    );
    expect(wrenchInUse([wrench, crowfoot], quantity('90°')).value?.share).toBe(1);
    expect(wrenchInUse([wrench, crowfoot], quantity('1/4 turn')).value).toMatchObject({
      angle: 90,
    });
    expect(wrenchInUse([wrench, none], undefined)).toEqual({});
  });

  test.each<[string, readonly TorqueTool[], string | undefined]>([
    ['wrench-length-missing', [crowfoot, none], undefined],
    ['wrench-length-missing', [crowfoot, tool('w', { length: '300..400 mm' })], undefined],
    ['several-wrenches', [wrench, crowfoot, tool('w', { length: '250 mm' })], undefined],
    ['several-extensions', [wrench, crowfoot, tool('other', { extension: '80 mm' })], undefined],
    ['angle-without-extension', [wrench], '90°'],
    ['angle-out-of-range', [wrench, crowfoot], '270°'],
    ['angle-out-of-range', [wrench, crowfoot], '30..45°'],
    ['reaches-grip', [wrench, tool('long', { extension: '350 mm' })], '180°'],
  ])('%s', (code, tools, angle) => {
    expect(wrenchInUse(tools, angle === undefined ? undefined : quantity(angle))).toMatchObject({
      fault: { code },
    });
  });

  test('two torque wrenches are one too many only where an extension is put on', () => {
    const other = tool('other', { length: '250 mm' });
    expect(wrenchInUse([wrench, other], undefined)).toEqual({});
    expect(wrenchInUse([wrench, other, crowfoot], undefined).fault).toEqual({
      code: 'several-wrenches',
      wrenches: ['wrench', 'other'],
      extension: 'crowfoot',
    });
  });

  test('a length is one figure above zero', () => {
    expect(plainLength(quantity('350 mm'))).toBeGreaterThan(0);
    for (const text of ['0 mm', '-5 mm', '300..400 mm', 'max 3 mm', '5 N·m'])
      expect(plainLength(quantity(text)), text).toBeUndefined();
  });
});

/** ASME PCC-1, legacy cross-pattern: after the passes across, once round at full torque until no nut turns. */
describe('the last pass round', () => {
  const at = (pattern: Parameters<typeof lastRound>[0], stages: readonly string[]) => {
    const round = lastRound(pattern, spec(stages));
    return round?.form === 'single' ? round.amount.value : round?.form;
  };

  test('is at the torque of the last stage', () => {
    expect(at({ circle: 8 }, ['20 N·m', '40 N·m', '60 N·m'])).toBe(60);
    expect(at({ circle: 4 }, ['60 N·m'])).toBe(60);
    expect(at({ circle: 4 }, ['100 N·m', 'back off 1 turn', '30 N·m'])).toBe(30);
    expect(at({ circle: 4 }, ['20..24 N·m'])).toBe('range');
  });

  test('is none where an angle tightens, nor where there is no circle of four', () => {
    expect(at({ circle: 8 }, ['20 N·m', '60 N·m + 90°'])).toBeUndefined();
    expect(at({ circle: 8 }, ['60 N·m', '90°'])).toBeUndefined();
    expect(at({ circle: 3 }, ['60 N·m'])).toBeUndefined();
    expect(at({ rows: [4, 4] }, ['60 N·m'])).toBeUndefined();
  });
});
