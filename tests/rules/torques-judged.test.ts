import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/report/index.ts';

const procedure = (id: string, machine: string, body: string): string =>
  `---\nprocedure: ${id}\ntitle: Check the bolts of ${machine}\nmachine: ${machine}\n---\n\n${body}\n1. :check{item=bolt}\n`;

const machine = (id: string, bolt: string): string =>
  `machine: ${id}\nname: ${id}\nfasteners:\n  bolt: { name: bolt, count: 4, ${bolt} }\n`;

/** Findings of a manual with one bolt on each of two machines. */
function found(bolt: string, { manual = '', waiver = '', other = 'torque: 9 N·m' } = {}) {
  const texts = {
    'manual.yaml': `title: T\n${manual}`,
    'machines/loader.yaml': machine('loader', bolt),
    'machines/mower.yaml': machine('mower', other),
    'procedures/loader.md': procedure('check-loader', 'loader', waiver),
    'procedures/mower.md': procedure('check-mower', 'mower', ''),
  };
  return inspect(
    {
      texts: Object.entries(texts).map(([path, text]) => ({ path, text })),
      unreadable: [],
      others: [],
    },
    'test',
  ).report;
}

const tooTight = 'thread: M10, class: 8.8, torque: [20 N·m, 95 N·m]';

describe('torque-implausible', () => {
  it('gives the numbers of the working', () => {
    const [finding, ...more] = found(tooTight).findings;
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'torque-implausible', level: 'warning', item: 'bolt' });
    // ISO 898-1: 58.0 mm² and 580 MPa; 0.20 × 10 mm × 33.6 kN = 67.3 N·m.
    expect(finding?.data).toEqual({
      written: '95 N·m',
      stage: 2,
      thread: 'M10',
      strength: 'class 8.8',
      threads: null,
      share: 1.412,
      byDefault: false,
      stressArea: 57.99,
      diameter: 10,
      proofStress: 580,
      proofLoad: 33630,
      nutFactor: 0.2,
      fullTorque: 67.27,
      leastTorque: 5.381,
    });
    expect(finding?.related.map(({ label }) => label)).toEqual([
      'the thread is said here',
      'the class is said here',
    ]);
  });

  it.for([
    [
      'N·m',
      '67.3 N·m gives the full proof load of class 8.8, 33600 N (7560 lbf) from 580 MPa on 58.0 mm²',
    ],
    ['lbf·ft', '49.6 lbf·ft gives the full proof load'],
  ] as const)('shows the working in %s where the manual has it', ([unit, words]) => {
    const [finding] = found(tooTight, { manual: `units: { torque: ${unit} }` }).findings;
    expect(finding?.help?.replaceAll('\u00a0', ' ')).toContain(words);
  });

  it('shows the working of an inch bolt in inches', () => {
    const [finding] = found('thread: 3/8-16 UNC, grade: 5, torque: 360 lbf·ft').findings;
    const help = finding?.help?.replaceAll('\u00a0', ' ');
    expect(help).toContain('360 lbf·in (40.7 N·m) or 36 lbf·ft (49 N·m) would be usual');
    expect(help).toContain('from 85000 psi on 0.0775 in²');
  });

  it('is told once of a default torque, and at a fastener that is weaker than the rule supposes', () => {
    const rule = (torque: string) => ({
      manual: `default-torques: [{ thread: M10, torque: ${torque} }]\n`,
      other: 'thread: M10',
    });
    const wrong = found('thread: M10, class: 4.6', rule('600 N·m')).findings;
    expect(wrong.map(({ file, item }) => [file, item])).toEqual([['manual.yaml', undefined]]);
    const weak = found('thread: M10, class: 4.6', rule('60 N·m')).findings;
    expect(weak.map(({ file, item }) => [file, item])).toEqual([['machines/loader.yaml', 'bolt']]);
    expect(weak[0]?.related.map(({ file }) => file)).toContain('manual.yaml');
  });

  it.for([
    'torque: 900 N·m',
    'thread: G 1/2, torque: 900 N·m',
    'thread: special M10 x 9, torque: 900 N·m',
    'thread: M10, class: 8.8, tightness: snug',
  ])('says nothing where nothing can be worked out: %s', (bolt) => {
    expect(found(bolt).findings).toEqual([]);
  });
});

describe('a waiver of a torque in the catalogue', () => {
  const waive = (attributes: string) => ({
    waiver: `:::waive{rule=torque-implausible${attributes}}\nDrawing 12 of the maker.\n:::\n`,
  });

  it('that names the item lets it pass', () => {
    const { findings, waivers } = found(tooTight, waive(' item=bolt'));
    expect(findings).toEqual([]);
    expect(waivers[0]?.waived.map(({ file }) => file)).toEqual(['machines/loader.yaml']);
  });

  it('does not reach another machine, and without an item does not leave the procedure', () => {
    const other = found('torque: 9 N·m', { ...waive(' item=bolt'), other: tooTight });
    expect(other.findings.map(({ rule, file }) => `${rule} ${file}`)).toEqual([
      'torque-implausible machines/mower.yaml',
      'waiver-unused procedures/loader.md',
    ]);
    const whole = found(tooTight, waive(''));
    expect(whole.findings.map(({ rule }) => rule)).toEqual(['torque-implausible', 'waiver-unused']);
  });
});
