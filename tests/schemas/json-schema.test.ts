import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { type Baseline, baselineSchema } from '../../schemas/baseline.ts';
import { machineSchema } from '../../schemas/catalogue.ts';
import { frontMatterSchema } from '../../schemas/front-matter.ts';
import { jsonSchemaFiles } from '../../schemas/json-schema.ts';
import { manualSchema } from '../../schemas/manual.ts';
import { type PullListData, pullListSchema } from '../../schemas/pull-list.ts';
import { type Report, reportSchema } from '../../schemas/report.ts';

const folder = new URL('../../schemas/json/', import.meta.url);

test('the files in schemas/json are those that the schemas make', () => {
  const files = jsonSchemaFiles();
  expect(readdirSync(folder).sort()).toEqual(files.map(({ name }) => name).sort());
  for (const { name, text } of files) {
    const message = `${name} is out of date: node src/command/write-json-schemas.ts`;
    expect(readFileSync(new URL(name, folder), 'utf8'), message).toBe(text);
  }
});

const point = (offset: number) => ({ line: 1, column: offset + 1, offset });
const place = { file: 'procedures/p.md', start: point(3), end: point(9) };
const report: Report = {
  tool: { name: 'tallybolt', version: '0.1.0' },
  manual: { title: 'T', procedures: 1, steps: 4, actions: 6 },
  findings: [
    {
      rule: 'left-out',
      level: 'error',
      message: '4 of 8 anvil bolts are still out at the end',
      ...place,
      procedure: 'p',
      item: 'anvil-bolt',
      data: { out: 4, of: 8, states: ['out', null, { deep: [true, 1.5] }] },
      related: [{ ...place, label: 'taken out here' }],
      fix: {
        kind: 'suggestion',
        title: 'Put them back',
        edits: [{ file: place.file, start: 9, end: 9, text: 'x' }],
      },
      known: false,
    },
  ],
  waivers: [],
  summary: { error: 1, warning: 0, note: 0, waived: 0 },
  baseline: { new: 1, known: 0, listed: 1, gone: [] },
};

const known = {
  rule: 'left-out',
  procedure: 'p',
  item: 'bolt',
  when: 'winch',
  says: '4 bolts are still out at the end',
  print: '0123456789abcdef0123456789abcdef',
  count: 2,
};
const baseline: Baseline = { baseline: 1, known: [known] };

const pullList: PullListData = {
  manual: { title: 'T', edition: '2' },
  for: 'winch',
  procedures: [{ id: 'p', title: 'P', document: 'M-1', revision: '3' }],
  lines: [
    {
      kind: 'fluid',
      item: 'oil',
      of: { kind: 'machine', id: 'm' },
      name: 'oil',
      quantity: { value: 38, unit: 'L' },
      upTo: true,
      containers: [{ count: 2, size: { value: 20, unit: 'L' } }],
      when: { condition: 'winch', words: 'for winch' },
      procedures: ['p'],
    },
  ],
};

const samples = {
  manual: {
    schema: manualSchema,
    data: {
      title: 'T',
      edition: 2,
      units: { torque: ['N·m', 'lbf·ft'], mass: 'kg' },
      variants: {
        feed: ['manual', 'hydraulic'],
        engine: { name: 'Engine', values: ['petrol', 'diesel'] },
      },
      never: ['feed = manual & engine = diesel'],
      rules: { 'left-out': 'error' },
      'default-torques': [{ thread: 'M8', class: 8.8, torque: '22 N·m' }],
    },
  },
  machine: {
    schema: machineSchema,
    data: {
      machine: 'm',
      name: 'M',
      fasteners: {
        bolt: {
          name: 'bolt',
          count: 8,
          class: 8.8,
          torque: { stages: ['10 N·m', '20 N·m'], threads: 'oiled' },
          pattern: { circle: 8 },
          holds: 'anvil',
        },
        nut: {
          name: 'nut',
          torque: ['10 N·m'],
          pattern: {
            positions: [
              [0, 1.5],
              [2, 3],
            ],
          },
          holds: ['anvil', 'guard'],
          behind: ['guard'],
        },
        screw: {
          name: 'screw',
          count: 4,
          torque: '10 N·m',
          pattern: { rectangle: [2, 2] },
          tightness: 'snug',
        },
      },
      parts: { anvil: { name: 'anvil', 'single-use': true } },
      circuits: {
        oil: {
          name: 'oil',
          fluid: 'HLP 46',
          capacity: '3 L',
          mix: { oil: '100 %' },
          pressure: true,
        },
      },
      energy: { battery: { name: 'battery', type: 'electrical', 'isolate-before': 'anvil' } },
      controls: { brake: { name: 'brake', positions: ['set', 'released'], home: 'set' } },
      hazards: {
        drum: {
          signal: 'danger',
          hazard: 'h',
          harm: 'h',
          avoid: 'a',
          'raised-by': [{ verb: 'remove', item: 'anvil' }],
        },
      },
    },
  },
  'front-matter': {
    schema: frontMatterSchema,
    data: {
      procedure: 'p',
      title: 'P',
      revision: 3,
      people: 2,
      tools: ['jack'],
      starts: { oil: 'drained' },
      leaves: { bolt: { out: 4, tight: 4 } },
      history: [{ revision: 1, date: '2026-01-01', change: 'First issue' }],
      items: { parts: { own: { name: 'own' } } },
    },
  },
  baseline: { schema: baselineSchema, data: baseline },
  'pull-list': { schema: pullListSchema, data: pullList },
  report: { schema: reportSchema, data: report },
} as const;

describe.each(Object.entries(samples))('%s', (name, { schema, data }) => {
  const text = jsonSchemaFiles().find((file) => file.name === `${name}.schema.json`)?.text ?? '';
  // Ajv checks JSON Schema for the language server that editors use for YAML. Formats need another package.
  const validate = new Ajv({ strict: false, validateFormats: false }).compile(JSON.parse(text));

  test('is sound JSON Schema, and takes what the schema takes', () => {
    expect(accepts(schema, data)).toBe(true);
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
  });

  test('agrees with the schema on every small change of the sample', () => {
    const changes = pathsIn(data);
    const value = fc.constantFrom<unknown>(
      undefined,
      null,
      0,
      1,
      -1,
      1.5,
      '',
      'x',
      'X y',
      true,
      [],
      ['a'],
      ['a', 'a'],
      {},
      { x: 1 },
      { name: 'a' },
    );
    fc.assert(
      fc.property(fc.constantFrom(...changes), value, fc.boolean(), (path, put, isExtra) => {
        const changed = JSON.parse(
          JSON.stringify(withValue(data, isExtra ? [...path, 'extra-key'] : path, put)) ?? 'null',
        );
        expect(validate(changed), JSON.stringify(changed)).toBe(accepts(schema, changed));
      }),
      { numRuns: 2000 },
    );
  });
});

function accepts(schema: z.ZodType, data: unknown): boolean {
  return schema.safeParse(data).success;
}

type Path = readonly (string | number)[];

function pathsIn(data: unknown, path: Path = []): Path[] {
  if (Array.isArray(data)) return [path, ...data.flatMap((item, i) => pathsIn(item, [...path, i]))];
  if (typeof data !== 'object' || data === null) return [path];
  return [path, ...Object.entries(data).flatMap(([key, value]) => pathsIn(value, [...path, key]))];
}

/** A copy with another value at a path; without it where the value is undefined. */
function withValue(data: unknown, [step, ...rest]: Path, value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(data)) {
    return typeof step === 'number'
      ? data.map((item, i) => (i === step ? withValue(item, rest, value) : item))
      : data;
  }
  if (typeof data !== 'object' || data === null) return data;
  const inner = Object.entries(data).find(([key]) => key === step)?.[1];
  return { ...data, [step]: withValue(inner, rest, value) };
}
