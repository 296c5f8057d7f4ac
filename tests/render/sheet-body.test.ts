import { describe, expect, test } from 'vitest';
import { byId, elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';
import { pumpManual } from './pump-manual.ts';

const book = bookOf(pumpManual);
const impeller = elementsOf(sheetIn(book, 'replace-impeller').bodyHtml);
const drain = elementsOf(sheetIn(book, 'drain-coolant').bodyHtml);
const fill = elementsOf(sheetIn(book, 'fill-coolant').bodyHtml);
const step = (number: string, body = impeller) => byId(body, `step-${number}`).inner;
const texts = (elements: readonly { text: string }[]) => elements.map(({ text }) => text);

describe('phases and steps', () => {
  test('each phase is a section with its heading', () => {
    const phases = withClass(impeller, 'phase');
    expect(phases.map(({ attributes }) => attributes.id)).toEqual([
      'phase-start',
      'phase-removal',
      'phase-reassembly',
    ]);
    expect(texts(impeller.filter(({ name }) => name === 'h2'))).toEqual(['Removal', 'Reassembly']);
  });

  test('numbers run through the sheet', () => {
    expect(withClass(impeller, 'step').map(({ attributes }) => attributes.id)).toEqual(
      ['1', '2', '3', '4', '4.1', '4.2', '5', '6', '7', '8', '9'].map((number) => `step-${number}`),
    );
  });

  test('each step has a tick box with a name, its number, its text and a margin', () => {
    const [label, tick, number, body, margin] = step('2');
    expect(label?.attributes.class).toBe('tick');
    expect(tick?.attributes).toMatchObject({ type: 'checkbox', 'aria-label': 'Step 2 done' });
    expect(number?.text).toBe('2');
    expect(body?.attributes.class).toBe('body');
    expect(margin).toBeDefined();
    expect(withClass(step('2'), 'margin')).toHaveLength(1);
  });

  test('headings go down one rank at a time', () => {
    const body = elementsOf(
      sheetIn(
        bookOf({
          'manual.yaml': 'title: T\n',
          'p.md':
            '---\nprocedure: p\ntitle: P\n---\n\n#### Deep\n\nText.\n\n###### Deeper\n\nText.\n\n# Top\n\nText.\n',
        }),
        'p',
      ).bodyHtml,
    );
    expect(body.map(({ name }) => name).filter((name) => /^h\d$/.test(name))).toEqual([
      'h2',
      'h3',
      'h2',
    ]);
  });
});

describe('hazards', () => {
  test('right before a list stand in the row of its first step, before its text', () => {
    const [body] = withClass(step('4'), 'body');
    expect(
      body?.inner.filter(({ name }) => name === 'aside').map(({ attributes }) => attributes.class),
    ).toEqual(['hazard danger', 'hazard notice']);
    expect(body?.inner[0]?.name).toBe('aside');
    expect(withClass(impeller, 'hazard')).toHaveLength(2);
  });

  test('say what can hurt, what it does, how to avoid it, and have the signal word as their name', () => {
    const [panel] = withClass(step('1', drain), 'hazard');
    expect(texts(withClass(panel?.inner ?? [], 'what'))).toEqual(['Hot water under the cap.']);
    expect(texts(withClass(panel?.inner ?? [], 'harm'))).toEqual(['Scalds.']);
    expect(texts(withClass(panel?.inner ?? [], 'avoid'))).toEqual(['Let the pump cool first.']);
    expect(panel?.attributes.role).toBe('note');
    expect(byId(drain, panel?.attributes['aria-labelledby'] ?? '').text).toBe('WARNING');
  });

  // ANSI Z535.6: the safety alert symbol stands with DANGER, WARNING and CAUTION only.
  test.each([
    ['danger', 1],
    ['warning', 1],
    ['caution', 1],
    ['notice', 0],
  ])('%s has %i alert triangles', (signal, triangles) => {
    const page = `---\nprocedure: p\ntitle: P\n---\n\n:::${signal}{hazard="Heat" harm="Burns"}\nWait.\n:::\n\n1. Go on.\n`;
    const sheet = sheetIn(bookOf({ 'manual.yaml': 'title: T\n', 'p.md': page }), 'p');
    const [panel] = withClass(elementsOf(sheet.bodyHtml), signal);
    expect(panel?.inner.filter(({ name }) => name === 'svg')).toHaveLength(triangles);
    expect(panel?.text).toBe(`${signal.toUpperCase()}Heat.Burns.Wait.`);
  });
});

describe('actions', () => {
  test('keep the words of the writer', () => {
    const [action] = withClass(step('2', drain), 'action');
    expect(action).toMatchObject({
      text: 'Take out the drain plug',
      attributes: { 'data-verb': 'remove', 'data-item': 'drain-plug' },
    });
    expect(action?.inner[0]?.attributes.href).toBe('../../machines/pump/index.html#drain-plug');
  });

  test('without words have those of the catalogue, small inside a sentence', () => {
    expect(texts(withClass(step('2', drain), 'action'))).toContain('drain the coolant');
    expect(texts(withClass(step('2'), 'action'))).toEqual(['Remove the 8 cover bolts (M10)']);
  });

  test('say for which variants they are', () => {
    expect(texts(withClass(step('2', fill), 'action'))).toEqual([
      'Only for drive = petrol: Set the cover aside',
    ]);
  });
});

describe('the margin', () => {
  const boxes = (number: string, kind: string, body = impeller) =>
    texts(withClass(step(number, body), 'box').filter((one) => withClass([one], kind).length > 0));

  test('has the torque of each fastener that the step torques', () => {
    expect(boxes('8', 'torque')).toEqual([
      'cover bolts × 845 N·m (33 lbf·ft)M10, class 8.8 torque chart',
    ]);
    expect(boxes('2', 'torque')).toEqual([]);
  });

  test('has a record box for each stage where the block form stands', () => {
    const [box] = withClass(step('6'), 'torque');
    const records = withClass(box?.inner ?? [], 'record');
    expect(records.map(({ attributes }) => attributes['aria-label'])).toEqual([
      'hub nut, stage 1: torque reached',
      'hub nut, stage 2: torque reached',
      'hub nut, stage 3: torque reached',
    ]);
    expect(texts(withClass(box?.inner ?? [], 'first'))).toEqual([
      '60 N·m',
      'back off 1/2 turn',
      '120 N·m + 90°',
    ]);
    expect(withClass(step('8'), 'record')).toEqual([]);
  });

  test('keeps value and unit together', () => {
    const { bodyHtml } = sheetIn(book, 'replace-impeller');
    expect(bodyHtml).toMatch(/45\u00a0N·m/);
    expect(bodyHtml).not.toMatch(/\d (N·m|lbf·ft|L|kg|mm|min|h)\b/);
  });

  test('has the fluid with its mix where it goes in, and its disposal where it comes out', () => {
    expect(boxes('1', 'fluid', fill)).toEqual([
      'In: coolant6 L (1.6 US gal)water and antifreezeMixShareVolumeantifreeze50 %3 L (0.8 US gal)clean water50 %3 L (0.8 US gal)',
    ]);
    expect(boxes('2', 'fluid', drain)).toEqual([
      'Out: coolant6 L (1.6 US gal)Collect the old coolant for recycling',
    ]);
  });

  test('has a place to write what is measured, with the limit', () => {
    const [box] = withClass(step('9'), 'reading');
    expect(box?.text).toContain('0.3–0.5 mm');
    expect(withClass(box?.inner ?? [], 'record')[0]?.attributes['aria-label']).toBe(
      'Measure the gap: value read',
    );
  });

  test('has a place to write for each piece', () => {
    const text = '1. :measure{item=pin}.\n2. :measure{item=pin qty=1}.\n3. :measure{item=stud}.';
    const machine =
      'machine: m\nname: M\nparts:\n  pin: { name: pin, count: 3 }\n  stud: { name: stud, count: 40 }\n';
    const files = {
      'manual.yaml': 'title: T\n',
      'machines/m.yaml': machine,
      'p.md': `---\nprocedure: p\ntitle: P\n---\n\n${text}\n`,
    };
    const body = elementsOf(sheetIn(bookOf(files), 'p').bodyHtml);
    expect(['1', '2', '3'].map((n) => withClass(step(n, body), 'record').length)).toEqual([
      3, 1, 1,
    ]);
  });

  test('marks what is thrown away and what goes in new', () => {
    expect(boxes('3', 'mark')).toEqual(['Discard cover gasket']);
    expect(boxes('4', 'mark')).toEqual(['Discard hub nut']);
    expect(boxes('6', 'mark')).toEqual(['New hub nut']);
  });

  test('has mass, tools, consumables, people and time', () => {
    expect(boxes('3', 'mass')).toEqual(['cover12 kg (26 lb)']);
    expect(boxes('9', 'tools')).toEqual(['Toolsfeeler gauge']);
    expect(boxes('1', 'tools', fill)).toEqual(['Toolswheel chocks × 2']);
    expect(boxes('7', 'consumables')).toEqual(['Usethread compound, medium strength']);
    expect(boxes('2', 'crew')).toEqual(['2 people, 15 min']);
  });

  test('keeps what belongs to a step inside the step out of the outer margin', () => {
    const outer = withClass(step('4'), 'margin').at(-1);
    expect(outer?.text).toBe('Discard hub nut');
  });
});

describe('blocks', () => {
  test('a performed procedure is a reference with number, length and what it leaves', () => {
    const [reference] = withClass(step('1'), 'reference');
    expect(reference?.text).toBe(
      'Do Drain the coolant (FP-40-drain-coolant), 4 steps, then come back here.It leaves coolant: drained.',
    );
    expect(reference?.inner.find(({ name }) => name === 'a')?.attributes.href).toBe(
      '../../procedures/drain-coolant/index.html',
    );
  });

  test('what must be done first is said with a link', () => {
    const [needs] = withClass(step('5'), 'needs');
    expect(needs?.text).toBe('Only after step 4.2');
    expect(needs?.inner.find(({ name }) => name === 'a')?.attributes.href).toBe('#step-4.2');
    expect(texts(withClass(step('4.2'), 'needs'))).toEqual(['Only after step 2']);
  });

  test('a figure has its text alternative, its caption, and a path that a plain folder resolves', () => {
    const figure = step('9').find(({ name }) => name === 'figure');
    expect(figure?.inner[0]?.attributes).toEqual({
      src: '../../figures/gap%20one.svg',
      alt: 'Where the gap is',
      loading: 'lazy',
    });
    expect(figure?.text).toBe('The gap.');
  });

  test('variants and findings are labelled', () => {
    expect(texts(withClass(fill, 'only'))).toContain('Only for drive = petrol: ');
    expect(texts(withClass(fill, 'condition'))).toEqual(['If the belt is cracked:']);
  });

  test('links to another procedure lead to its page and its section', () => {
    const link = byId(impeller, 'phase-start').inner.find(({ name }) => name === 'a');
    expect(link?.attributes.href).toBe('../../procedures/drain-coolant/index.html#phase-drain');
  });
});

test('no id stands twice, and every link inside the page has its target', () => {
  for (const { bodyHtml } of book.sheets) {
    const elements = elementsOf(bodyHtml);
    const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const inside = elements
      .flatMap(({ attributes }) => attributes.href ?? [])
      .filter((href) => href.startsWith('#'));
    for (const href of inside) expect(ids).toContain(href.slice(1));
  }
});

test('every control has a name', () => {
  const inputs = book.sheets
    .flatMap(({ bodyHtml }) => elementsOf(bodyHtml))
    .filter(({ name }) => name === 'input');
  expect(inputs.length).toBeGreaterThan(10);
  for (const { attributes } of inputs) expect(attributes['aria-label']).toMatch(/\S/);
});
