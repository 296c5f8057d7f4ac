import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingSchema } from '../../schemas/finding.ts';
import { inspect } from '../../src/report/index.ts';
import type { ManualFiles, TextFile } from '../../src/source/index.ts';
import { comparePlaces } from '../../src/source/index.ts';

const machine = `machine: chipper
name: Chipper
fasteners:
  bolt: { name: bolt, count: 4, torque: 22 N·m, holds: plate }
  screw: { name: screw, tightness: hand-tight, lets-go-when: loose }
parts:
  plate: { name: plate, behind: guard, hazards: sharp }
  guard: { name: guard }
  gasket: { name: gasket, single-use: true, behind: plate }
connections:
  hose: { name: hose, type: hose, on: plate, circuit: oil, cap-when-open: true }
circuits:
  oil: { name: oil, fluid: gear oil, capacity: 4 L, drain: screw, pressure: true, bleed: at the top }
energy:
  battery: { name: battery, type: electrical, isolate-before: plate }
controls:
  cock: { name: cock, positions: [open, shut], home: open }
aids:
  pin: { name: pin, blocks: guard }
hazards:
  sharp: { signal: caution, hazard: Sharp edges, harm: Cuts to the hands, avoid: Wear gloves. }
`;

const verbs = [
  'remove',
  'install',
  'replace',
  'loosen',
  'tighten',
  'torque',
  'disconnect',
  'connect',
  'cap',
  'uncap',
  'drain',
  'fill',
  'bleed',
  'relieve',
  'isolate',
  'restore',
  'fit',
  'withdraw',
  'set',
  'discard',
  'check',
  'remov',
];
const items = [
  'bolt',
  'screw',
  'plate',
  'guard',
  'gasket',
  'hose',
  'oil',
  'battery',
  'cock',
  'pin',
  'sharp',
  'plat',
];
const extras = [
  '',
  ' qty=2',
  ' qty=9',
  ' new',
  ' to=shut',
  ' to=ajar',
  ' value="25 N·m"',
  ' value="16 ft-lbs"',
  ' amount="1,5 L"',
  ' when="x = y"',
];
const words = [
  'Remove the guard',
  'tighten it securely',
  'in the reverse order of removal',
  'to 24 N·m',
  '(18 lbf·ft)',
  '5 bar',
  '70 psi',
  '"quoted"',
  '`code`',
  '[link](b.md)',
  '![](p.png)',
  '<b>',
  '&amp;',
  '\\:x',
  'and then',
  ', fit the pin',
  'é–“”',
];

const action = fc
  .tuple(
    fc.constantFrom(...verbs),
    fc.constantFrom('', '[the thing]', '[Tighten to 24 N·m]'),
    fc.constantFrom(...items),
    fc.constantFrom(...extras),
  )
  .map(([verb, label, item, extra]) => `:${verb}${label}{item=${item}${extra}}`);
const saying = fc
  .array(fc.oneof(action, fc.constantFrom(...words), fc.string({ maxLength: 6 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((parts) => parts.join(' ').replace(/\s+/g, ' '));
const step = fc.oneof(
  { weight: 6, arbitrary: saying.map((text) => `1. ${text}.`) },
  fc.constantFrom(
    '1. ::perform{procedure=b}',
    '1. ::perform{procedure=a part=start}',
    '::hazard{of=sharp}',
    ':::warning{hazard="x"}\ny\n:::',
    '## Removal',
    ':::if[it is worn]',
    ':::',
    '   ::step{#one needs=two}',
    '::reverse{of=removal}',
  ),
);
const procedure = (id: string): fc.Arbitrary<TextFile> =>
  fc
    .tuple(
      fc.array(step, { maxLength: 7 }),
      fc.constantFrom(
        '',
        'leaves: { oil: drained }\n',
        'starts: { bolt: { out: 2, tight: 2 } }\n',
        'leaves: { guard: lost }\n',
      ),
    )
    .map(([steps, contract]) => ({
      path: `procedures/${id}.md`,
      text: `---\nprocedure: ${id}\ntitle: ${id.toUpperCase()}\n${contract}---\n\n${steps.join('\n\n')}\n`,
    }));

const manual: fc.Arbitrary<ManualFiles> = fc
  .tuple(procedure('a'), procedure('b'))
  .map((procedures) => ({
    texts: [
      { path: 'manual.yaml', text: 'title: T\n' },
      { path: 'machines/chipper.yaml', text: machine },
      ...procedures,
    ],
    unreadable: [],
    others: [],
  }));

describe('rules on any manual', () => {
  it('give findings that are plain JSON, in order, each once, inside their files', () => {
    fc.assert(
      fc.property(manual, (files) => {
        const { findings } = inspect(files, 'test').report;
        expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
        for (const one of findings) findingSchema.parse(one);
        for (const [i, one] of findings.entries()) {
          const next = findings[i + 1];
          if (next !== undefined) expect(comparePlaces(one, next)).toBeLessThanOrEqual(0);
          const text = files.texts.find(({ path }) => path === one.file)?.text ?? '';
          expect(one.end.offset).toBeLessThanOrEqual(text.length);
          for (const edit of one.fix?.edits ?? []) {
            const edited = files.texts.find(({ path }) => path === edit.file)?.text ?? '';
            expect(edit.start).toBeLessThanOrEqual(edit.end);
            expect(edit.end).toBeLessThanOrEqual(edited.length);
          }
        }
        expect(new Set(findings.map((one) => JSON.stringify(one))).size).toBe(findings.length);
      }),
      { numRuns: 300 },
    );
  });

  it('give the same findings whatever the order of the files', () => {
    fc.assert(
      fc.property(manual, (files) => {
        const turned = { ...files, texts: [...files.texts].reverse() };
        expect(inspect(turned, 'test').report).toEqual(inspect(files, 'test').report);
      }),
      { numRuns: 60 },
    );
  });

  it('never throw on any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const front = '---\nprocedure: a\ntitle: A\n---\n\n1. ';
        const texts = [{ path: 'procedures/a.md', text: front + text }];
        expect(() => inspect({ texts, unreadable: [], others: [] }, 'test')).not.toThrow();
      }),
      { numRuns: 300 },
    );
  });
});
