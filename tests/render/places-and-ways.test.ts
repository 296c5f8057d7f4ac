import { describe, expect, test } from 'vitest';
import { byId, elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

/** An invented cart with two wheels, sold with or without a brake. */
const machine = `machine: cart
name: Cart
fasteners:
  nut: { name: wheel nut, count: 5, each: [left, right], torque: [40 N·m, 95 N·m] }
  cap-screw: { name: cap screw, each: [left, right], torque: 10 N·m }
parts:
  wheel: { name: wheel, each: [left, right] }
  band: { name: brake band, when: brake = band }
  belt: { name: belt }
connections:
  hose: { name: hose, type: hose, each: [supply, return], torque: 60 N·m }
`;

const settings = `title: T
variants:
  brake: { name: parking brake, values: [none, band] }
  jack: [no, yes]
`;

function sheetOf(text: string, front = '') {
  const files = {
    'manual.yaml': settings,
    'machines/cart.yaml': machine,
    'p.md': `---\nprocedure: p\ntitle: P\n${front}---\n\n${text}\n`,
  };
  const sheet = sheetIn(bookOf(files), 'p');
  return { sheet, body: elementsOf(sheet.bodyHtml) };
}

type Body = ReturnType<typeof elementsOf>;
const texts = (body: Body, name: string) =>
  withClass(body, name).map(({ text }) => text.replaceAll('\u00a0', ' '));
const labels = (body: Body, name: string) =>
  withClass(body, name).map(({ attributes }) => attributes['aria-label']);

describe('a step that is done at several places', () => {
  test('has a small tick box for each beside its own', () => {
    const { body } = sheetOf('1. :remove{item=nut}.');
    const boxes = withClass(body, 'place').flatMap(({ inner }) => inner);
    expect(boxes.map(({ attributes }) => attributes['aria-label'])).toEqual([
      'Step 1, left done',
      'Step 1, right done',
    ]);
    expect(texts(body, 'place')).toEqual(['left', 'right']);
    expect(texts(body, 'tick')).toEqual(['1']);
  });

  test.each([
    ['one place', '1. :remove{item=nut each=left}.'],
    ['no places', '1. :remove{item=belt}.'],
  ])('has none for %s', (_, text) => {
    expect(withClass(sheetOf(text).body, 'place')).toEqual([]);
  });

  test('leaves those of a step inside it to that step', () => {
    const { body } = sheetOf('1. Do this:\n   1. :remove{item=nut}.');
    expect(labels(body, 'places')).toEqual(['Step 1.1 at each place']);
  });

  test.each([
    [':remove[Take the nuts off]{item=nut}', 'Take the nuts off (on each: left, right)'],
    [':remove[Take the wheels off]{item=wheel}', 'Take the wheels off (left and right)'],
    [':remove[Take the wheel off]{item=wheel each=left}', 'Take the wheel off (left)'],
    [':remove[Take the left wheel off]{item=wheel each=left}', 'Take the left wheel off'],
    [':disconnect[Pull off supply and return hose]{item=hose}', 'Pull off supply and return hose'],
  ])('%s says the places that its words do not name', (directive, expected) => {
    expect(texts(sheetOf(`1. ${directive}.`).body, 'action')).toEqual([expected]);
  });

  test('has a record box for each stage at each place', () => {
    const { body } = sheetOf('1. Tighten them.\n\n   :::torque{item=nut}\n   :::');
    expect(texts(body, 'box-title')).toEqual(['wheel nuts × 5 on each: left, right']);
    expect(labels(body, 'record')).toEqual([
      'wheel nuts, stage 1, left: torque reached',
      'wheel nuts, stage 1, right: torque reached',
      'wheel nuts, stage 2, left: torque reached',
      'wheel nuts, stage 2, right: torque reached',
    ]);
  });

  test('has record boxes only where it is done, and for one stage as well', () => {
    const { body } = sheetOf(
      '1. :torque{item=hose each=supply}.\n\n   :::torque{item=hose}\n   :::\n2. :torque{item=cap-screw}.\n\n   :::torque{item=cap-screw}\n   :::',
    );
    expect(labels(body, 'record')).toEqual([
      'hoses, supply: torque reached',
      'cap screws, left: torque reached',
      'cap screws, right: torque reached',
    ]);
    expect(texts(body, 'box-title')).toEqual(['hoses, supply', 'cap screws, left and right']);
  });

  test('has a place to write a reading for each', () => {
    const { body } = sheetOf(
      '1. :measure[Measure]{item=wheel value="max 2 mm"}.\n2. :measure[Measure]{item=nut qty=2}.',
    );
    expect(labels(body, 'record')).toEqual([
      'Measure, left: value read',
      'Measure, right: value read',
      'Measure, left 1: value read',
      'Measure, left 2: value read',
      'Measure, right 1: value read',
      'Measure, right 2: value read',
    ]);
  });
});

describe('variants', () => {
  test('are said before the words, with the names that the manual gives them', () => {
    const { body } = sheetOf(
      '1. :remove{item=band when="brake = band"} and :remove{item=belt when="jack & brake != band"}.\n2. Look.\n   ::step{when=jack}',
    );
    expect(texts(body, 'action')).toEqual([
      'Only for parking brake = band: remove the brake band',
      'only for jack and parking brake ≠ band: remove the belt',
    ]);
    expect(texts(byId(body, 'step-2').inner, 'only')).toEqual(['Only for jack:']);
  });

  test('of a whole procedure are known to its page, and not said again of its parts', () => {
    const text = '1. :remove{item=band}. :install{item=band new}.';
    const { sheet } = sheetOf(text, 'when: brake = band\n');
    expect(sheet.variants).toBe('parking brake = band');
    expect(sheet.parts.map(({ when }) => when)).toEqual([undefined]);
    const general = sheetOf(text.replaceAll('}', ' when="brake = band"}')).sheet;
    expect(general.variants).toBeUndefined();
    expect(general.parts.map(({ when }) => when)).toEqual(['for parking brake = band']);
  });

  test('are told apart from what was found', () => {
    const { body } = sheetOf(
      '1. Look.\n\n   :::if[the belt is cracked]\n   :remove{item=belt}.\n   :::\n2. :install{item=belt new when=\'jack & "the belt is cracked"\'}.\n3. Look.\n   ::step{when=\'"the belt is cracked"\'}',
    );
    expect(texts(body, 'only').map((text) => text.trim())).toEqual([
      'Only for jack, and only if the belt is cracked:',
      'Only if the belt is cracked:',
    ]);
  });
});

describe('what the technician finds', () => {
  const { body } = sheetOf(
    [
      ':::if[the belt is cracked]',
      '1. :remove{item=belt}.',
      '2. :install{item=belt new}.',
      ':::',
      '',
      '1. Look at the wheels.',
      '',
      '   :::either[they are worn]',
      '   :replace{item=wheel}.',
      '   :::',
      '',
      '   :::or[they are good]',
      '   :check{item=belt value="9 mm"}.',
      '   :::',
    ].join('\n'),
  );

  test('is a frame with its condition as its name, and its steps numbered on', () => {
    expect(texts(body, 'condition')).toEqual([
      'If the belt is cracked:',
      'Either, if they are worn:',
      'Or, if they are good:',
    ]);
    const [way] = withClass(body, 'way');
    expect(way?.attributes.role).toBe('group');
    expect(byId(body, way?.attributes['aria-labelledby'] ?? '').text).toBe(
      'If the belt is cracked:',
    );
    expect(texts(way?.inner ?? [], 'number')).toEqual(['1', '2']);
    expect(texts(body, 'number')).toEqual(['1', '2', '3']);
  });

  test('keeps the boxes of a way in its frame', () => {
    const [, worn, good] = withClass(body, 'way');
    expect(texts(worn?.inner ?? [], 'mark')).toEqual(['New wheels × 2']);
    expect(texts(good?.inner ?? [], 'reading')).toHaveLength(1);
    expect(texts(byId(body, 'step-3').inner, 'margin')).toEqual(['']);
  });
});
