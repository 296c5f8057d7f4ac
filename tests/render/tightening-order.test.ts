import { describe, expect, test } from 'vitest';
import { type Element, elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const machine = `machine: m
name: M
fasteners:
  ring-bolt: { name: ring bolt, count: 8, torque: [20 N·m, 40 N·m, 60 N·m], pattern: { circle: 8 } }
  plain-bolt: { name: plain bolt, count: 4, torque: 60 N·m, pattern: { circle: 4 } }
  bent-bolt: { name: bent bolt, count: 8, torque: 20 N·m + 90°, pattern: { circle: 8 } }
  cover-bolt: { name: cover bolt, count: 6, torque: 9 N·m, pattern: { rectangle: [3, 2] } }
  wheel-nut: { name: wheel nut, count: 5, each: [left, right], torque: 110 N·m, pattern: { circle: 5 } }
  big-bolt: { name: big bolt, count: 32, torque: 400 N·m, pattern: { circle: 32 } }
  huge-bolt: { name: huge bolt, count: 120, torque: 400 N·m, pattern: { circle: 120 } }
  two-bolt: { name: pair bolt, count: 2, torque: 9 N·m, pattern: { rows: [2] } }
  wrong-bolt: { name: wrong bolt, count: 6, torque: 9 N·m, pattern: { circle: 8 } }
  loose-bolt: { name: loose bolt, count: 6, torque: 9 N·m }
connections:
  pipe: { name: pipe, type: pipe, torque: 60 N·m }
tools:
  wrench: { name: torque wrench, length: 350 mm }
  crowfoot: { name: crowfoot, extension: 100 mm }
`;

const book = (text: string) =>
  bookOf({
    'manual.yaml': 'title: T\n',
    'machines/m.yaml': machine,
    'p.md': `---\nprocedure: p\ntitle: P\n---\n\n${text}\n`,
  });
const bodyOf = (text: string) => elementsOf(sheetIn(book(text), 'p').bodyHtml);
const boxIn = (body: readonly Element[], kind: string): Element => {
  const [box] = withClass(body, kind);
  if (box === undefined) throw new Error(`no ${kind}`);
  return box;
};
const box = (text: string, kind = 'torque'): Element => boxIn(bodyOf(text), kind);
const pictures = (elements: readonly Element[]): readonly Element[] =>
  withClass(elements, 'tightening');
/** The numbers of a picture, bolt by bolt in the order in which they are drawn, and where they stand. */
const bolts = (picture: Element | undefined) =>
  withClass(picture?.inner ?? [], 'bolt').map(({ text, inner, attributes }) => {
    const circle = inner.find(({ name }) => name === 'circle')?.attributes ?? {};
    return {
      text,
      x: Number(circle.cx),
      y: Number(circle.cy),
      isFirst: attributes.class === 'bolt first',
    };
  });

describe('the torque box of a pattern', () => {
  test('has stages, the order of each and a last round', () => {
    const { text, inner } = box('1. :torque{item=ring-bolt}.');
    expect(text).toMatch(/60 N·m \(44 lbf·ft\)Each stage in this order:1.*Then once round/);
    expect(text).toContain('Then once round, clockwise, at 60 N·m (44 lbf·ft), until none turns.');
    const [picture] = pictures(inner);
    expect(picture?.attributes).toMatchObject({
      role: 'img',
      'aria-label': 'Tightening order of 8, counted clockwise from the top: 1, 5, 3, 7, 2, 6, 4, 8',
    });
  });

  test('numbers the bolts in the order of work: opposite each other, then across', () => {
    const [first, second, third, fourth] = bolts(
      pictures(box('1. :torque{item=ring-bolt}.').inner)[0],
    );
    expect([first, second, third, fourth].map((one) => one?.text)).toEqual(['1', '2', '3', '4']);
    expect([first, second, third].map((one) => one?.isFirst)).toEqual([true, false, false]);
    expect(second?.x).toBeCloseTo(first?.x ?? 0, 1);
    expect(second?.y).toBeGreaterThan(first?.y ?? 0);
    expect(third?.y).toBeCloseTo(fourth?.y ?? 0, 1);
    expect(third?.x).toBeGreaterThan(fourth?.x ?? 0);
  });

  test('of one single torque has the order and the last round, and no stages that nobody gave', () => {
    const { text } = box('1. :torque{item=plain-bolt}.');
    expect(text).toContain('In this order:');
    expect(text).toContain('Then once round, clockwise, at 60 N·m (44 lbf·ft), until none turns.');
    expect(text).not.toContain('stage');
  });

  test('of a torque with an angle, and of what is no circle, has no last round', () => {
    for (const item of ['bent-bolt', 'cover-bolt']) {
      const { text, inner } = box(`1. :torque{item=${item}}.`);
      expect(text, item).toContain('In this order:');
      expect(text, item).not.toContain('once round');
      expect(pictures(inner), item).toHaveLength(1);
    }
  });

  test('shows one picture for the same pattern in two places', () => {
    expect(pictures(bodyOf('1. :torque{item=wheel-nut}.'))).toHaveLength(1);
    expect(pictures(bodyOf('1. :torque{item=wheel-nut each=left}.'))).toHaveLength(1);
  });

  test.each([
    ['some of the bolts', ':torque{item=ring-bolt qty=4}'],
    ['two bolts', ':torque{item=two-bolt}'],
    ['a pattern that does not fit the count', ':torque{item=wrong-bolt}'],
    ['no pattern', ':torque{item=loose-bolt}'],
    ['a check', ':check{item=ring-bolt}'],
  ])('has no order for %s', (_, action) => {
    const { text, inner } = box(`1. ${action}.`);
    expect(pictures(inner)).toEqual([]);
    expect(text).not.toContain('order');
  });

  test('with many bolts points to a larger picture below the words', () => {
    const body = bodyOf('1. :torque{item=big-bolt}.');
    expect(boxIn(body, 'torque').text).toContain('In the order of the picture.');
    const [picture, ...others] = pictures(boxIn(body, 'body').inner);
    expect(others).toEqual([]);
    expect(bolts(picture)).toHaveLength(32);
    expect(boxIn(body, 'tightening-figure').text).toContain('Tightening order: big bolts');
    expect(pictures(bodyOf(':::torque{item=big-bolt}\n:::'))).toHaveLength(1);
  });

  test('with too many for any picture says the order in numbers', () => {
    const body = bodyOf('1. :torque{item=huge-bolt}.');
    expect(pictures(body)).toEqual([]);
    expect(boxIn(body, 'torque').text).toContain(
      'In this order, counted clockwise from the top: 1, 61, 31, 91,',
    );
  });
});

describe('a picture', () => {
  const drawn = ['ring-bolt', 'cover-bolt', 'wheel-nut', 'big-bolt'].map(
    (item) => [item, pictures(bodyOf(`1. :torque{item=${item}}.`))[0]] as const,
  );

  test.each(drawn)(
    'of %s is printed as large as it says, with numbers of 7 points or more',
    (_, picture) => {
      const { width, height, viewBox } = picture?.attributes ?? {};
      expect(viewBox).toBe(`0 0 ${width} ${height}`);
      const sizes = (picture?.inner ?? []).flatMap(({ name, attributes }) =>
        name === 'text' ? [Number(attributes['font-size'])] : [],
      );
      // A pixel of CSS is 1/96 inch, a point 1/72.
      expect(Math.min(...sizes) * 0.75).toBeGreaterThanOrEqual(7);
    },
  );

  test.each(drawn)('of %s has its bolts apart and in its frame', (_, picture) => {
    const { width, height } = picture?.attributes ?? {};
    const radius = Number(
      picture?.inner.find(
        ({ name, attributes }) => name === 'circle' && attributes.class !== 'part',
      )?.attributes.r,
    );
    const all = bolts(picture);
    expect(all.length).toBeGreaterThan(4);
    for (const [i, one] of all.entries()) {
      expect(Math.min(one.x, one.y)).toBeGreaterThanOrEqual(radius);
      expect(one.x + radius).toBeLessThanOrEqual(Number(width));
      expect(one.y + radius).toBeLessThanOrEqual(Number(height));
      for (const other of all.slice(i + 1)) {
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(2 * radius);
      }
    }
  });
});

describe('the box of a loosening', () => {
  test('has the reverse order, by its own numbers', () => {
    const { text, inner } = box('1. :remove{item=ring-bolt}.', 'loosen');
    expect(text).toContain('Loosen in this order:');
    const [picture] = pictures(inner);
    expect(picture?.attributes['aria-label']).toBe(
      'Loosening order of 8, counted clockwise from the top: 8, 4, 6, 2, 7, 3, 5, 1',
    );
    const tight = bolts(pictures(box('1. :torque{item=ring-bolt}.').inner)[0]);
    const loose = bolts(picture);
    expect(Math.sign((loose[7]?.y ?? 0) - (loose[6]?.y ?? 0))).toBe(
      Math.sign((tight[0]?.y ?? 0) - (tight[1]?.y ?? 0)),
    );
  });

  test('stands where the bolts are loosened first, and not where they come out after', () => {
    const body = bodyOf('1. :loosen{item=ring-bolt}.\n2. :remove{item=ring-bolt}.');
    expect(withClass(body, 'loosen')).toHaveLength(1);
    expect(withClass(bodyOf('1. :loosen{item=ring-bolt}.'), 'loosen')).toHaveLength(1);
  });

  test.each(['qty=4 item=ring-bolt', 'item=loose-bolt', 'item=two-bolt'])('not for %s', (what) => {
    expect(withClass(bodyOf(`1. :remove{${what}}.`), 'loosen')).toEqual([]);
  });
});

/** Setting = T × L / (L + E·cos α): tests/joint names the published sources. 60 × 350 / 450 = 46.7 */
describe('a torque wrench with a crowfoot', () => {
  test.each([
    ['', 'Set the wrench to47 N·m (34 lbf·ft)with the crowfoot in line'],
    [' angle="90°"', 'Set the wrench to60 N·m (44 lbf·ft)with the crowfoot at 90° to it'],
    [' angle="60°"', 'Set the wrench to52 N·m (39 lbf·ft)with the crowfoot at 60° to it'],
    [' angle="180°"', 'Set the wrench to84 N·m (62 lbf·ft)with the crowfoot pointing back'],
  ])('is set to less, unless it stands aside%s', (angle, words) => {
    const { text } = box(`1. :torque{item=pipe with="wrench crowfoot"${angle}}.`);
    expect(text).toContain('60 N·m (44 lbf·ft)');
    expect(text).toContain(words);
  });

  test('has a setting a stage, and goes round at the last of them', () => {
    const { text } = box('1. :torque{item=ring-bolt with="wrench crowfoot"}.');
    expect(text).toMatch(/Set the wrench to15\.6 N·m.*31 N·m.*47 N·m.*with the crowfoot in line/);
    expect(text).toContain('Then once round, clockwise, at the last setting, until none turns.');
  });

  test.each(['with=wrench', 'with=crowfoot', 'with="wrench crowfoot" angle="200°"'])(
    'has no setting: %s',
    (how) => {
      expect(box(`1. :torque{item=pipe ${how}}.`).text).not.toContain('Set the wrench');
    },
  );
});

test('the machine page says pattern and order, and the torque chart leads there', () => {
  const { machines, torques } = book('1. :torque{item=ring-bolt}.');
  const entries = machines.flatMap(({ groups }) => groups.flatMap(({ entries }) => entries));
  const facts = (id: string) => entries.find((entry) => entry.id === id)?.facts ?? [];
  expect(facts('ring-bolt')).toContainEqual(['Pattern', 'circle of 8', []]);
  expect(facts('cover-bolt')).toContainEqual([
    'Tightening order',
    '2, 5, 1, 4, 6, 3, counted clockwise from the top left corner',
    [],
  ]);
  expect(facts('wrench')).toContainEqual(['Length', '350\u00a0mm (13.78\u00a0in)', []]);
  const row = (anchor: string) => torques.find((one) => one.anchor === anchor);
  expect(row('m-ring-bolt')?.order).toEqual({
    href: 'machines/m/index.html#ring-bolt',
    text: 'tightening order',
  });
  expect(row('m-loose-bolt')?.order).toBeUndefined();
});
