import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { pullListSchema } from '../../schemas/pull-list.ts';
import { type Folder, makeFolder, run } from './run.ts';

const demo = fileURLToPath(new URL('../../content', import.meta.url));

const manual = {
  'manual.yaml': 'title: Door manual\nedition: 3\nvariants: { lock: [none, bolt] }\n',
  'procedures/renew.md': `---
procedure: renew
title: Renew the hinge
revision: 2
items:
  fasteners:
    screw: { name: plate screw, count: 4, thread: M6, class: 8.8, stack: [washer], single-use: true, torque: 9 N·m, part-number: D-6 }
  parts:
    pin: { name: "=hinge, left", single-use: true, when: lock = bolt, note: "Say \\"left\\"" }
  circuits:
    oil: { name: hinge oil, fluid: ISO VG 32, capacity: 0.7 L, containers: [250 mL, 1 L], drain: pin }
  tools:
    wrench: { name: torque wrench, size: 5 to 60 N·m }
---

1. :remove{item=screw}. :drain{item=oil}.
2. :replace{item=pin}.
3. :install{item=screw new}. :torque{item=screw with=wrench}. :fill{item=oil}.
`,
  'procedures/bolt.md':
    '---\nprocedure: bolt\ntitle: Look at the bolt\nwhen: lock = bolt\n---\n\n1. Look at the bolt.\n',
};

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(manual);
});
afterEach(() => folder.remove());

const pull = (...words: string[]) => run(['pull', ...words, '--in', folder.path]);

describe('pull', () => {
  test('prints a list in columns', async () => {
    const { code, out } = await pull('renew');
    expect({ code, out }).toEqual({
      code: 0,
      out: `Renew the hinge (renew)

Tools and aids
  1  torque wrench  5 to 60 N·m

Parts
  1  =hinge, left
       only for lock = bolt
  4  plate screws  D-6  M6, class 8.8
  4  washers            with plate screws

Fluids
  0.7 L (0.74 US qt)  hinge oil  3 × 250 mL, ISO VG 32
`,
    });
  });

  test('--format json is as its schema says, with UCUM units', async () => {
    const { code, out } = await pull('renew', '--format', 'json');
    const data = pullListSchema.parse(JSON.parse(out));
    expect(code).toBe(0);
    expect(data.manual).toEqual({ title: 'Door manual', edition: '3' });
    expect(data.procedures).toEqual([
      { id: 'renew', title: 'Renew the hinge', document: 'renew', revision: '2' },
    ]);
    expect(data.lines.at(-1)).toEqual({
      kind: 'fluid',
      item: 'oil',
      of: { kind: 'procedure', id: 'renew' },
      name: 'hinge oil',
      specification: 'ISO VG 32',
      quantity: { value: 0.7, unit: 'L' },
      containers: [{ count: 3, size: { value: 250, unit: 'mL' } }],
      procedures: ['renew'],
    });
    expect(data.lines.find(({ item }) => item === 'pin')?.when).toEqual({
      condition: 'lock = bolt',
      words: 'for lock = bolt',
    });
  });

  test('--format csv is read by a reader of RFC 4180, and starts no formula', async () => {
    const { code, out } = await pull('renew', '--format', 'csv', '--for', 'lock = bolt');
    const rows: Record<string, string>[] = parse(out, { columns: true, record_delimiter: '\r\n' });
    expect(code).toBe(0);
    expect(rows.map((row) => [row.name, row.count, row.quantity, row.unit, row.only])).toEqual([
      ['torque wrench', '1', '', '', ''],
      ["'=hinge, left", '1', '', '', ''],
      ['plate screw', '4', '', '', ''],
      ['washer', '4', '', '', ''],
      ['hinge oil', '', '0.7', 'L', ''],
    ]);
    expect(rows[1]?.note).toBe('Say "left"');
    expect(rows[4]?.containers).toBe('3 x 250 mL');
  });

  test('--for leaves out what other machines have, and says which procedure is for none', async () => {
    const { code, out, err } = await pull('renew', 'bolt', '--for', 'lock = none');
    expect(code).toBe(0);
    expect(err).toContain('Left out: bolt is for no machine with lock = none.\n');
    expect(out).toMatch(/^Renew the hinge \(renew\)\nOnly for lock = none\n\n/);
    expect(out).not.toContain('=hinge');
  });

  test.each([
    [['renw'], /^tallybolt: There is no procedure renw in .*\.\nDid you mean renew\?\n$/],
    [['xylophone'], /There is no procedure xylophone in .*\nIts id stands after `procedure:`/],
    [
      ['bolt', '--for', 'lock = none'],
      /None of these procedures is for a machine with lock = none/,
    ],
    [['renew', '--for', 'lock = bolt & lock = none'], /No machine of this manual is one with lock/],
    [
      ['renew', '--for', 'lock = blot'],
      /--for “lock = blot”: “blot” is not a value of “lock”; perhaps “bolt” is meant/,
    ],
    [['renew', '--for', 'lock ='], /--for “lock =”: The condition breaks off/],
    [[], /pull needs to know: which procedures\?/],
  ])('%j ends with 2 and a plain message', async (words, message) => {
    const { code, out, err } = await pull(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err).not.toContain('    at ');
  });

  test('warns where the manual has errors', async () => {
    await folder.write({
      'procedures/bad.md': '---\nprocedure: bad\ntitle: Bad\n---\n\n1. :remove{item=nothing}.\n',
    });
    const { code, err } = await pull('renew');
    expect({ code, err }).toEqual({
      code: 0,
      err: 'The manual has errors, so that this list may be wrong. Run `tallybolt inspect` to see them.\n',
    });
  });
});

test('the demo manual: oil in containers, the coolant as its concentrate and its water', async () => {
  const { code, out, err } = await run([
    'pull',
    'change-hydraulic-oil',
    'replace-radiator',
    '--in',
    demo,
    '--format',
    'json',
  ]);
  const { lines } = pullListSchema.parse(JSON.parse(out));
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const fluids = lines.filter(({ kind }) => kind === 'fluid');
  // 6.8 L at 50 % each; 38 L of oil in cans of 20 L and 5 L.
  expect(
    fluids.map(({ name, quantity, containers = [] }) => [
      name,
      quantity?.value,
      containers.map(({ count, size }) => `${count} x ${size.value}`).join(),
    ]),
  ).toEqual([
    ['coolant concentrate', 3.4, '4 x 1'],
    ['deionised water', 3.4, '1 x 5'],
    ['hydraulic oil', 38, '2 x 20'],
  ]);
});
