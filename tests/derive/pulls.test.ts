import { describe, expect, test } from 'vitest';
import { bookOf, sheetIn } from '../render/linked-manual.ts';
import { pumpManual } from '../render/pump-manual.ts';

const book = bookOf(pumpManual);
const impeller = sheetIn(book, 'replace-impeller');

/** Parts to pull for steps on a single-use bolt of 8 pieces with two washers, and a plain cover. */
function partsFor(...steps: string[]) {
  const sheet = sheetIn(
    bookOf({
      'manual.yaml': 'title: Pulls\n',
      'machines/m.yaml': `machine: m
name: M
fasteners:
  bolt: { name: bolt, count: 8, single-use: true, stack: [flat washer, flat washer] }
  screw: { name: screw, count: 4 }
parts:
  pad: { name: pad, each: [left, right], single-use: true }
`,
      'procedures/p.md': `---\nprocedure: p\ntitle: P\n---\n\n${steps.map((step) => `1. ${step}`).join('\n')}\n`,
    }),
    'p',
  );
  return sheet.parts.map(({ item, count, when }) =>
    [count, item.text, when].filter(Boolean).join(' '),
  );
}

describe('what to fetch', () => {
  test('has the tools of front matter, steps, actions and performed procedures, and the aids', () => {
    expect(impeller.tools.map(({ item, count, detail }) => [item.text, count, detail])).toEqual([
      ['drain pan', undefined, undefined],
      ['feeler gauge', undefined, undefined],
      ['torque wrench', undefined, '20\u00a0to\u00a0200\u00a0N·m'],
    ]);
  });

  test('has the count of aids', () => {
    const { tools } = sheetIn(book, 'fill-coolant');
    expect(tools.map(({ item, count }) => [item.text, count])).toEqual([['wheel chocks', 2]]);
  });

  test('has no fluid that is only looked at', () => {
    const { fluids, consumables } = sheetIn(book, 'fill-coolant');
    expect(fluids.map(({ item }) => item.text)).toEqual(['coolant']);
    expect(consumables).toEqual([]);
  });

  test('has consumables', () => {
    expect(impeller.consumables.map(({ item, detail }) => [item.text, detail])).toEqual([
      ['thread compound', 'medium strength'],
    ]);
  });

  test('has the parts that are used up, each once though it comes out and goes in new', () => {
    expect(impeller.parts.map(({ item, count, detail }) => [item.text, count, detail])).toEqual([
      ['cover gasket', 1, 'FP-117'],
      ['hub nut', 1, 'M16, class 10.9'],
    ]);
  });

  test('counts the washers that go with each fastener', () => {
    expect(partsFor(':remove{item=bolt qty=3}.')).toEqual(['3 bolts', '6 flat washers']);
  });

  test('takes a removal without a count for the rest of the pieces', () => {
    expect(partsFor(':remove{item=bolt qty=3}.', ':remove{item=bolt}.')).toEqual([
      '8 bolts',
      '16 flat washers',
    ]);
  });

  test('counts two whole renewals twice', () => {
    expect(partsFor(':replace{item=bolt}.', ':replace{item=bolt}.')[0]).toBe('16 bolts');
  });

  test('leaves out what comes out and goes back', () => {
    expect(partsFor(':remove{item=screw}.', ':install{item=screw}.')).toEqual([]);
  });

  test('counts what is thrown away and put in new once', () => {
    expect(partsFor(':discard{item=screw qty=2}.', ':install{item=screw new qty=2}.')).toEqual([
      '2 screws',
    ]);
  });

  test('counts each instance', () => {
    expect(partsFor(':remove{item=pad}.')).toEqual(['2 pads']);
    expect(partsFor(':remove{item=pad each=left}.')).toEqual(['1 pad']);
  });

  test('has each of two ways through the work with its own count', () => {
    const branch =
      ':::either[it is worn]\n   :replace{item=screw qty=3}.\n   :::\n   :::or[it is bent]\n   :replace{item=screw qty=1}.\n   :::';
    expect(partsFor(branch)).toEqual(['3 screws if it is worn', '1 screw if it is bent']);
  });
});

describe('people and time', () => {
  test('are the most people and the sum of the times, performed procedures included', () => {
    expect(impeller.people).toBe(2);
    // 10 min + 5 min of the drain job, 15 min and 1 h of its own; other steps have none.
    expect(impeller.time).toBe('at least 1\u00a0h 30\u00a0min');
    expect(sheetIn(book, 'drain-coolant').time).toBe('at least 15\u00a0min');
    expect(sheetIn(book, 'fill-coolant').time).toBeUndefined();
  });
});

describe('hazards at a glance', () => {
  test('come most severe first, each once, with those of performed procedures', () => {
    expect(impeller.hazards.map(({ signal, hazard }) => [signal, hazard])).toEqual([
      ['danger', 'The impeller can turn'],
      ['warning', 'Hot water under the cap'],
      ['notice', 'Grit'],
    ]);
    expect(impeller.hazards.map(({ avoidHtml }) => avoidHtml)).toEqual([
      '<p>Lock the shaft.</p>',
      '<p>Let the pump cool first.</p>',
      '<p>Keep it clean.</p>',
    ]);
  });
});
