import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { jsonSchemaFiles } from '../../schemas/json-schema.ts';
import { type Change, redlineSchema } from '../../schemas/redline.ts';
import { makeRedline, readRevision } from '../../src/redline/index.ts';
import { filesOf } from '../support/manual.ts';
import { redlineOf } from './compare.ts';

const items = ['bolt', 'cover', 'seal', 'pipe'] as const;
const verbs = ['remove', 'install', 'check', 'loosen'] as const;

/** Steps with few words, so that the same ones come up often. */
const step = fc.record({
  verb: fc.constantFrom(...verbs),
  item: fc.constantFrom(...items),
  words: fc.constantFrom('', ' slowly', ' with a second person', ' in the shade'),
  hazard: fc.boolean(),
  people: fc.constantFrom(1, 2),
});
const entry = fc.record({
  count: fc.integer({ min: 1, max: 4 }),
  torque: fc.constantFrom('10 N·m', '12 N·m', '8.85 lbf·ft'),
});
const model = fc.record({ bolt: entry, steps: fc.array(step, { maxLength: 7 }) });
type Model = typeof model extends fc.Arbitrary<infer T> ? T : never;

/** The texts of a model, its keys in order or turned round, its lines wrapped narrow or wide. */
function textsOf({ bolt, steps }: Model, turned = false): Record<string, string> {
  const order = <T extends object>(of: T): object =>
    turned ? Object.fromEntries(Object.entries(of).reverse()) : of;
  const machine = order({
    machine: 'pot',
    name: 'Pot',
    fasteners: { bolt: order({ name: 'bolt', ...bolt }) },
    parts: order({ cover: { name: 'cover' }, seal: { name: 'seal' } }),
    connections: { pipe: { name: 'pipe', type: 'pipe' } },
    hazards: {
      edge: order({ signal: 'warning', hazard: 'Sharp edge', harm: 'Cuts', avoid: 'Wear gloves.' }),
    },
  });
  const gap = turned ? '\n   ' : ' ';
  const lines = steps.map(({ verb, item, words, hazard, people }, i) => {
    const panel = hazard ? '::hazard{of=edge}\n\n   ' : '';
    const said = words.replaceAll(' ', gap);
    return `${i + 1}. ${panel}:${verb}[Do it to the ${item}${said}]{item=${item}}.\n   ::step{people=${people}}\n`;
  });
  const front = stringify(order({ procedure: 'job', title: 'Job', revision: 1 }));
  const texts = {
    'manual.yaml': 'title: Pot manual\n',
    'machines/pot.yaml': stringify(machine),
    'procedures/job.md': `---\n${front}---\n\n## Work\n\n${lines.join(turned ? '\n' : '')}`,
  };
  return turned ? Object.fromEntries(Object.entries(texts).reverse()) : texts;
}

/** What changed, but for which side it is seen from. */
function seenFromBoth({ kind, before, after, field }: Change): string {
  const sides = [before !== undefined, after !== undefined].filter(Boolean).length;
  return `${kind} ${field ?? ''} ${sides}`;
}

describe('laws of a redline', () => {
  test('a manual beside itself changes nothing, however its texts are laid out', () => {
    fc.assert(
      fc.property(model, (one) => {
        const { changes, findings } = redlineOf(textsOf(one), textsOf(one, true));
        expect(changes).toEqual([]);
        expect([findings.new, findings.gone]).toEqual([[], []]);
      }),
      { numRuns: 40 },
    );
  });

  test('what changed one way changed the other way round', () => {
    fc.assert(
      fc.property(model, model, (a, b) => {
        const [there, back] = [
          redlineOf(textsOf(a), textsOf(b)),
          redlineOf(textsOf(b), textsOf(a)),
        ];
        expect(there.changes.map(seenFromBoth).sort()).toEqual(
          back.changes.map(seenFromBoth).sort(),
        );
        expect(there.findings.new.length).toBe(back.findings.gone.length);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  test('two manuals that differ are told to differ, most dangerous first, as the schema says', () => {
    fc.assert(
      fc.property(model, model, (a, b) => {
        fc.pre(JSON.stringify(a) !== JSON.stringify(b));
        const redline = redlineOf(textsOf(a), textsOf(b));
        // 12 N·m and 8.85 lbf·ft are one torque, in two units.
        expect(redline.changes.length).toBeGreaterThan(0);
        expect(redlineSchema.parse(JSON.parse(JSON.stringify(redline)))).toEqual(redline);
        const ranks = redline.changes.map(({ risk }) => Object.keys(redline.summary).indexOf(risk));
        expect(ranks).toEqual(ranks.toSorted((x, y) => x - y));
      }),
      { numRuns: 40 },
    );
  });
});

test('the order in which files are given does not count', () => {
  const texts = { ...textsOf({ bolt: { count: 2, torque: '10 N·m' }, steps: [] }) };
  const about = { version: '0', today: '2026-01-01' };
  const files = filesOf(texts);
  const turned = { ...files, texts: files.texts.toReversed() };
  const of = (one: typeof files) => readRevision(one, {}, about);
  const tool = { name: 'tallybolt', version: '0' } as const;
  expect(makeRedline(of(files), of(turned), tool).changes).toEqual([]);
});

test('its JSON Schema is among those that are written', () => {
  expect(jsonSchemaFiles().map(({ name }) => name)).toContain('redline.schema.json');
});
