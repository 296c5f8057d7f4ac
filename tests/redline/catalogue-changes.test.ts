import { describe, expect, test } from 'vitest';
import { edited, manual, plain, redlineOf, toldOf } from './compare.ts';

const machine = (from: string, to: string): string[] =>
  toldOf(edited(['machine', from, to]).changes).map(plain);

test('a manual beside itself has no redline', () => {
  expect(redlineOf(manual, manual).changes).toEqual([]);
});

describe('torque', () => {
  test.for([
    [
      '[20 N·m, 45 N·m]',
      '[20 N·m, 40 N·m]',
      'joint torque Torque of cover bolt lowered: 20 N·m, then 45 N·m → 20 N·m, then 40 N·m',
    ],
    [
      '[20 N·m, 45 N·m]',
      '[20 N·m, 48 N·m]',
      'joint torque Torque of cover bolt raised: 20 N·m, then 45 N·m → 20 N·m, then 48 N·m',
    ],
    [
      '[20 N·m, 45 N·m]',
      '[45 N·m]',
      'joint torque-stages Stages of the torque of cover bolt are fewer: 20 N·m, then 45 N·m → 45 N·m',
    ],
    [
      '[20 N·m, 45 N·m]',
      '[20 N·m, 45 ± 5 N·m]',
      'proof torque-tolerance Tolerance of the torque of cover bolt widened: 20 N·m, then 45 N·m → 20 N·m, then 45 ± 5 N·m',
    ],
    [
      'threads: oiled',
      'threads: dry',
      'joint torque-lubrication Threads of cover bolt: oiled → dry',
    ],
  ])('%s → %s', ([from = '', to = '', told]) => {
    expect(machine(from, to)).toEqual([told]);
  });

  test('an angle', () => {
    const angle = ['[20 N·m, 45 N·m]', '[20 N·m, 45 N·m + 60°]', '[20 N·m, 45 N·m + 90°]'] as const;
    const [before, after] = [angle[1], angle[2]].map((stages) => ({
      ...manual,
      'machines/press.yaml': (manual['machines/press.yaml'] ?? '').replace(angle[0], stages),
    }));
    const { changes } = redlineOf(before ?? {}, after ?? {});
    expect(changes).toMatchObject([{ kind: 'torque-angle', direction: 'higher', risk: 'joint' }]);
  });

  test('one that is taken out, and one that comes', () => {
    const torque = ', torque: { stages: [20 N·m, 45 N·m], threads: oiled }';
    expect(edited(['machine', torque, '']).changes).toMatchObject([
      { kind: 'torque', risk: 'joint', before: expect.stringContaining('45') },
    ]);
  });
});

/** Factors of NIST SP 811 (2008), appendix B.8: 1 lbf·ft = 1.355 818 N·m, 1 gal (US) = 3.785 412 L, 1 psi = 6.894 757 kPa. */
describe('the same quantity in another unit is a change of the unit', () => {
  test.for([
    [
      '[20 N·m, 45 N·m]',
      `[${(20 / 1.355818).toFixed(2)} lbf·ft, ${(45 / 1.355818).toFixed(1)} lbf·ft]`,
    ],
    ['capacity: 38 L', `capacity: ${(38 / 3.785412).toFixed(2)} US gal`],
    ['pressure: 180 bar', `pressure: ${(18000 / 6.894757).toFixed(0)} psi`],
    ['capacity: 38 L', 'capacity: 38000 mL'],
  ])('%s → %s', ([from = '', to = '']) => {
    expect(edited(['machine', from, to]).changes).toMatchObject([{ kind: 'unit', risk: 'unit' }]);
  });

  test.for([
    ['[20 N·m, 45 N·m]', `[20 N·m, ${((45 / 1.355818) * 0.95).toFixed(1)} lbf·ft]`, 'torque'],
    ['capacity: 38 L', `capacity: ${((38 / 3.785412) * 0.95).toFixed(2)} US gal`, 'capacity'],
  ])('but a twentieth less is less, in whatever unit: %s → %s', ([from = '', to = '', kind]) => {
    const [first] = edited(['machine', from, to]).changes;
    expect(first).toMatchObject({ kind, direction: 'lower' });
  });
});

describe('other members', () => {
  test.for([
    ['count: 8', 'count: 6', 'joint count Count of cover bolt lowered: 8 → 6'],
    ['count: 8', 'count: 10', 'work count Count of cover bolt raised: 8 → 10'],
    [
      'fluid: HLP 46',
      'fluid: HLP 32',
      'fluid fluid Fluid of hydraulic oil changed: HLP 46 → HLP 32',
    ],
    [
      'capacity: 38 L',
      'capacity: 36 L',
      'fluid capacity Capacity of hydraulic oil lowered: 38 L → 36 L',
    ],
    [
      'capacity: 38 L',
      'mix: { oil: 90 %, additive: 10 % }, capacity: 38 L',
      'fluid mix Mix of hydraulic oil is new: oil 90 %, additive 10 %',
    ],
    ['single-use: true, ', '', 'joint entry-field single-use of seal: yes → nothing'],
    [
      'pressure: 180 bar',
      'pressure: false',
      'protection entry-field pressure of hydraulic oil: 180 bar → nothing',
    ],
    [
      ', isolate-before: [cover]',
      '',
      'protection entry-field isolate-before of mains supply: cover → nothing',
    ],
    [', behind: cover', '', 'order entry-field behind of seal: cover → nothing'],
    [
      'signal: warning',
      'signal: caution',
      'protection hazard-signal Signal word of “The ram falls” lowered: WARNING → CAUTION',
    ],
    [
      'signal: warning',
      'signal: danger',
      'work hazard-signal Signal word of “The ram falls” raised: WARNING → DANGER',
    ],
    [
      'harm: Crushed hands',
      'harm: Bruises',
      'work hazard-words Harm, of “The ram falls”, changed: “Crushed hands” → “Bruises”',
    ],
    [
      '{ name: seal, ',
      '{ name: seal, when: feed = ram, ',
      'order machines seal is for fewer machines: all machines → feed = ram',
    ],
    [
      '{ name: seal, ',
      '{ name: seal, limits: max 2 mm, ',
      'work limit Limit of seal is new: max 2 mm',
    ],
    [
      '{ name: lifting eye }',
      '{ name: eye bolt }',
      'words entry-field name of eye bolt: lifting eye → eye bolt',
    ],
  ])('%s → %s', ([from = '', to = '', told]) => {
    expect(machine(from, to)).toEqual([told]);
  });

  test('a limit that lets more pass, and one that lets less', () => {
    const at = (limit: string) => ({
      ...manual,
      'machines/press.yaml': (manual['machines/press.yaml'] ?? '').replace(
        '{ name: seal, ',
        `{ name: seal, limits: { gap: ${limit} }, `,
      ),
    });
    const told = (from: string, to: string) => redlineOf(at(from), at(to)).changes;
    expect(told('max 2 mm', 'max 3 mm')).toMatchObject([
      { kind: 'limit', field: 'gap', direction: 'wider', risk: 'proof' },
    ]);
    expect(told('1..2 mm', '1.2..2 mm')).toMatchObject([{ direction: 'narrower', risk: 'work' }]);
  });
});

describe('entries', () => {
  test('an id that changed everywhere is an id that changed, and nothing else', () => {
    const after = Object.fromEntries(
      Object.entries(manual).map(([path, text]) => [
        path,
        text.replaceAll('cover-bolt', 'lid-screw'),
      ]),
    );
    expect(redlineOf(manual, after).changes).toMatchObject([
      { kind: 'entry-id', before: 'cover-bolt', after: 'lid-screw', risk: 'record' },
    ]);
  });

  test('one that came and one that went', () => {
    const { changes } = edited([
      'machine',
      'lifting-eye: { name: lifting eye }',
      'crane: { name: crane }',
    ]);
    expect(changes).toMatchObject([
      { kind: 'entry', item: 'lifting-eye', before: 'lifting eye' },
      { kind: 'entry', item: 'crane', after: 'crane' },
    ]);
  });

  test('a change reaches all that use it, and all that perform those', () => {
    const [change] = edited(['machine', 'count: 8', 'count: 6']).changes;
    expect(change?.touches).toEqual([
      { procedure: 'change-seal', through: [] },
      { procedure: 'yearly-service', through: ['change-seal'] },
    ]);
    expect(change?.places.after).toMatchObject({ file: 'machines/press.yaml', start: { line: 4 } });
  });
});

describe('the manual', () => {
  test('a default torque is told once, with what it reaches', () => {
    const rules = (torque: string): string =>
      `title: Press manual\ndefault-torques:\n  - { thread: M10, class: 8.8, torque: ${torque} }\n`;
    const plainBolts = (manual['machines/press.yaml'] ?? '').replace(
      ', torque: { stages: [20 N·m, 45 N·m], threads: oiled }',
      '',
    );
    const at = (torque: string) => ({
      ...manual,
      'machines/press.yaml': plainBolts,
      'manual.yaml': rules(torque),
    });
    const { changes } = redlineOf(at('45 N·m'), at('40 N·m'));
    expect(toldOf(changes).map(plain)).toEqual([
      'joint default-torque Default torque for M10, class 8.8 lowered: 45 N·m → 40 N·m',
    ]);
    expect(changes[0]?.touches.map(({ procedure }) => procedure)).toEqual([
      'change-seal',
      'yearly-service',
    ]);
  });

  test.for([
    ['cold-kit: [no, yes]', 'cold-kit: [no, yes]\nrules: { left-out: off }', 'proof rule-level'],
    ['cold-kit: [no, yes]', 'cold-kit: [no, yes]\nsafety: Take care.', 'protection setting'],
    ['cold-kit: [no, yes]', 'cold-kit: [no, yes]\nlift-limit: 25 kg', 'proof setting'],
    ['feed: [belt, ram]', 'feed: [belt, ram, hand]', 'order variant'],
    ['title: Press manual', 'title: Manual of the press', 'record setting'],
  ])('%s → %s', ([from = '', to = '', told]) => {
    expect(toldOf(edited(['manual', from, to]).changes)).toEqual([
      expect.stringContaining(told ?? '?'),
    ]);
  });
});
