import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseStrength, parseThread } from '../../src/joint/index.ts';

// Sizes and pitches: ISO 261 and ASME B1.1, from memory but for those in metric-values.ts and inch-values.ts.
describe('threads', () => {
  it.for([
    ['M12', 12, 1.75],
    ['M12 × 1.25', 12, 1.25],
    ['M12x1.25', 12, 1.25],
    ['m8', 8, 1.25],
    ['M 8', 8, 1.25],
    ['M8 x 1,25', 8, 1.25],
    ['M12-1.75', 12, 1.75],
    ['M12-6g', 12, 1.75],
    ['M12x1.5-5H/6H LH', 12, 1.5],
    ['M20 LH', 20, 2.5],
    ['M8x30', 8, 1.25],
    ['M8 × 1 × 30', 8, 1],
    ['M40x1.5', 40, 1.5],
  ] as const)('%s is metric: %f, pitch %f', ([text, diameter, pitch]) => {
    expect(parseThread(text)).toEqual({ value: { standard: 'metric', diameter, pitch } });
  });

  it.for([
    ['1/2-13 UNC', 0.5, 13],
    ['1/2-20 UNF', 0.5, 20],
    ['1/2-13', 0.5, 13],
    ['1/2 UNC', 0.5, 13],
    ['1/2 in-13 UNC-2A', 0.5, 13],
    ['#10-24 UNC', 0.19, 24],
    ['No. 10-24', 0.19, 24],
    ['10-32', 0.19, 32],
    ['8-32', 0.164, 32],
    ['1-8', 1, 8],
    ['1-14 UNF', 1, 14],
    ['3/4-16', 0.75, 16],
    ['1-1/8-12', 1.125, 12],
    ['1 1/8-7 UNC LH', 1.125, 7],
    ['2-4-1/2 UNC', 2, 4.5],
    ['1-1/16-12 UN', 1.0625, 12],
    ['.250-28 UNF', 0.25, 28],
    ['1/4-20 × 3/4', 0.25, 20],
    ['1/4-24 UNS', 0.25, 24],
  ] as const)('%s is inch: %f, %f to the inch', ([text, diameter, perInch]) => {
    expect(parseThread(text)).toEqual({ value: { standard: 'inch', diameter, perInch } });
  });

  it.for([
    ['M13 × 9', 'no-such-size', ['M12', 'M14']],
    ['M13', 'no-such-size', ['M12', 'M14']],
    ['M12.9', 'no-such-size', ['M12', 'M14']],
    ['M10 x 4', 'no-such-pitch', ['M10 × 1.5', 'M10 × 1.25', 'M10 × 1', 'M10 × 0.75']],
    ['1/2-11 UNC', 'no-such-pitch', ['1/2-13 UNC', '1/2-20 UNF']],
    ['1/2-11', 'no-such-pitch', ['1/2-13 UNC', '1/2-20 UNF']],
    ['1/2-13 UNF', 'no-such-pitch', ['1/2-13 UNC', '1/2-20 UNF']],
    ['#10-30 UNC', 'no-such-pitch', ['#10-24 UNC', '#10-32 UNF']],
    ['17/32-14', 'no-such-size', ['1/2-13 UNC', '1/2-20 UNF', '9/16-12 UNC', '9/16-18 UNF']],
  ] as const)('%s exists in no standard', ([text, code, near]) => {
    expect(parseThread(text)).toMatchObject({ problem: { code, near } });
  });

  it.for([
    'G 1/2',
    'G1/2A',
    'R 1/4',
    'Rp 3/4',
    '1/2-14 NPT',
    '1/2-14',
    '3/8-19',
    '1/2-12 BSW',
    '1/2-12',
    '3/4-11.5 NH',
    'Tr 40 × 7',
    'MJ12x1.25',
    'M12 fine',
    'M15',
    'M150x3',
    'M0.8',
    'Pg 16',
    'ST4.8',
    '#8 x 1-1/2 wood screw',
    '5 × 40 wood screw',
    'special M13 x 1',
    '10-30',
    '1/2',
    '',
  ])('%s is left alone', (text) => {
    expect(parseThread(text)).toEqual({});
  });

  it('never throws, and says at most one of both', () => {
    const piece = fc.constantFrom(
      'M',
      '#',
      '1',
      '2',
      '/',
      '-',
      ' ',
      'x',
      '.',
      '0',
      'UNC',
      '"',
      'LH',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((all) => all.join('')),
        ),
        (text) => {
          const { value, problem } = parseThread(text);
          expect(value === undefined || problem === undefined).toBe(true);
          if (value !== undefined) expect(value.diameter).toBeGreaterThan(0);
        },
      ),
    );
  });
});

describe('classes and grades', () => {
  it.for([
    ['class', '8.8', 'class 8.8'],
    ['class', '8', 'class 8'],
    ['class', '10', 'class 10'],
    ['class', '10.9 ZP', 'class 10.9'],
    ['class', 'A2-70', 'class A2-70'],
    ['class', 'a4-80', 'class A4-80'],
    ['grade', '5', 'grade 5'],
    ['grade', '8.2', 'grade 8.2'],
    ['grade', 'SAE grade 8', 'grade 8'],
  ] as const)('%s %s is known', ([member, text, name]) => {
    expect(parseStrength(member, text).value?.name).toBe(name);
  });

  it.for([
    ['class', '8.9', undefined],
    ['class', '88', undefined],
    ['class', 'A2-75', undefined],
    ['class', '5.2', 'grade'],
    ['class', '2', 'grade'],
    ['grade', '8.8', 'class'],
    ['grade', '9', undefined],
  ] as const)('%s %s is unknown', ([member, text, belongs]) => {
    const { value, problem } = parseStrength(member, text);
    expect(value).toBeUndefined();
    expect(problem).toMatchObject({ member, ...(belongs && { belongs }) });
    expect(problem?.belongs).toBe(belongs);
  });

  it.for([
    ['class', '45H'],
    ['class', '05'],
    ['class', '010.9'],
    ['class', '6g'],
    ['class', 'A4'],
    ['class', 'C1-110'],
    ['grade', 'B7'],
    ['grade', 'A325'],
    ['grade', '7'],
  ] as const)('%s %s is left alone', ([member, text]) => {
    expect(parseStrength(member, text)).toEqual({});
  });

  // ISO 3506-1 for the stress, from memory; ISO 898-2: a nut stands the proof load of its bolt.
  it('a nut is as strong as its bolt, and A2-70 has 450 MPa', () => {
    expect(parseStrength('class', '8').value?.proof).toEqual(
      parseStrength('class', '8.8').value?.proof,
    );
    expect(parseStrength('class', 'A2-70').value?.proof[0]?.stress).toBe(450);
  });
});
