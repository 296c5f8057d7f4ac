import { describe, expect, test } from 'vitest';
import { elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const machine = `machine: m
name: M
fasteners:
  bolt: { name: bolt, count: 4, thread: M10, torque: [20 N·m, 45 N·m] }
  stretch-bolt: { name: stretch bolt, torque: 60 N·m + 90° }
connections:
  hose: { name: feed hose, type: hose, count: 2, torque: 60 N·m }
circuits:
  coolant:
    name: coolant
    fluid: glycol coolant
    capacity: 6 L
    mix: { glycol: 50 %, water: 50 % }
    dispose: Give it to a collector
`;

const bodyOf = (text: string) => {
  const files = {
    'manual.yaml': 'title: T\nunits: { volume: [L, US gal] }\n',
    'machines/m.yaml': machine,
    'p.md': `---\nprocedure: p\ntitle: P\n---\n\n${text}\n`,
  };
  return elementsOf(sheetIn(bookOf(files), 'p').bodyHtml);
};
const boxes = (kind: string, text: string) =>
  withClass(bodyOf(text), 'box')
    .filter((box) => withClass([box], kind).length > 0)
    .map((box) => ({
      label: box.attributes['aria-label'],
      text: box.text.replaceAll('\u00a0', ' '),
      records: withClass(box.inner, 'record').length,
    }));

describe('the torque box', () => {
  test('of a check says that it is one, with the torque at which the joint was left', () => {
    expect(boxes('torque', '1. :check{item=bolt}.')).toEqual([
      {
        label: 'Check torque: bolts',
        text: 'bolts × 4Check at45 N·m (33 lbf·ft)M10 torque chart',
        records: 0,
      },
    ]);
    expect(boxes('torque', '1. :check{item=stretch-bolt}.')[0]?.text).toContain('60 N·m + 90°');
  });

  test('of a check gives way to that of the tightening, and to a value of its own', () => {
    const [box, ...others] = boxes('torque', '1. :torque{item=bolt}. :check{item=bolt}.');
    expect(box?.label).toBe('Torque: bolts');
    expect(others).toEqual([]);
    expect(boxes('torque', '1. :check{item=bolt value="40 N·m"}.')).toEqual([]);
  });

  test.each([
    ['text form', '1. :torque{item=hose}.', 0],
    ['block form', '1. Tighten it.\n\n   :::torque{item=hose}\n   :::', 1],
    ['block outside the steps', ':::torque{item=hose}\n:::', 1],
  ])('shows a connection: %s', (_, text, records) => {
    expect(boxes('torque', text)).toEqual([
      {
        label: 'Torque: feed hoses',
        text: expect.stringMatching(/^feed hoses × 260 N·m \(44 lbf·ft\)/),
        records,
      },
    ]);
  });
});

describe('the fluid box', () => {
  const block = ':::fluid{item=coolant}\n:::';
  const all =
    'coolant6 L (1.6 US gal)glycol coolantMixShareVolumeglycol50 %3 L (0.8 US gal)water50 %3 L (0.8 US gal)Old fluid: Give it to a collector';

  test('of the block form shows all that is known, in a step and outside', () => {
    expect(boxes('fluid', block).map(({ text }) => text)).toEqual([`Fluid: ${all}`]);
    const inStep = `1. Look.\n\n   ${block.replace('\n', '\n   ')}`;
    expect(boxes('fluid', inStep).map(({ text }) => text)).toEqual([`Fluid: ${all}`]);
  });

  test('of the block form stands once, with what the step does', () => {
    const text = `1. :drain{item=coolant}.\n\n   ${block.replace('\n', '\n   ')}`;
    expect(boxes('fluid', text).map((box) => box.text)).toEqual([`Out: ${all}`]);
  });

  test('tells a part that is filled in from the whole', () => {
    const text = `1. :fill{item=coolant amount="2 L"}.\n\n   ${block.replace('\n', '\n   ')}`;
    expect(boxes('fluid', text)[0]?.text).toContain(
      'In: coolant2 L (0.53 US gal)glycol coolantCapacity: 6 L (1.6 US gal)Mix',
    );
  });
});

test('values in prose get their second unit, those in code and in addresses do not', () => {
  const body = bodyOf('1. Leave 2 mm, `2 mm` and [2 mm](https://example.org/2%20mm).');
  const [step] = withClass(body, 'body');
  expect(step?.text.replaceAll('\u00a0', ' ')).toBe(
    'Leave 2 mm (0.08 in), 2 mm and 2 mm (0.08 in).',
  );
  expect(body.find(({ name }) => name === 'a')?.attributes.href).toBe('https://example.org/2%20mm');
});

test('a sheet that starts or ends away from home is known as part of other work', () => {
  const sheet = (front: string) => {
    const files = {
      'manual.yaml': 'title: T\n',
      'machines/m.yaml': machine,
      'p.md': `---\nprocedure: p\ntitle: P\n${front}---\n\n1. Look.\n`,
    };
    return sheetIn(bookOf(files), 'p').isContract;
  };
  expect(sheet('')).toBe(false);
  expect(sheet('leaves: { coolant: full, bolt: { tight: 4 } }\n')).toBe(false);
  expect(sheet('starts: { coolant: drained }\n')).toBe(true);
  expect(sheet('leaves: { bolt: { out: 1, tight: 3 } }\n')).toBe(true);
});

describe('the box of people and time', () => {
  const told = (facts: string) =>
    boxes('crew', `1. A.\n   ::step{${facts}}`).map(({ text }) => text);

  test('says the wait after the work, or the wait alone', () => {
    expect(told('people=2 time="5 min" wait="1 h"')).toEqual(['2 people, 5 min, then wait 1 h']);
    expect(told('wait="20 min"')).toEqual(['wait 20 min']);
  });
});
