import { describe, expect, test } from 'vitest';
import { byId, type Element, elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const machine = `machine: mill
name: Mill
parts:
  guard: { name: guard, mass: 22 kg }
  stone: { name: stone, each: [left, right] }
`;

const guardOff = `---
procedure: guard-off
title: Take the guard off
leaves: { guard: out }
---

Where this [comes to an end](#done), the guard is off. See [the service](service.md#oil) and [the whole](guard-off.md).

:::figure{src=guard.svg alt="The guard"}
::callout{item=guard at="10,10"}
:::

## Before

1. Look at the guard.
   ::step{#looked}

## Lift

1. :::caution{hazard="Sharp edge" harm="Cut hands"}
   Wear gloves.
   :::

   :remove{item=guard}
   ::step{people=2 needs=looked time="5 min"}

   1. Wipe it.

## Done

1. Note the hour.
`;

const service = `---
procedure: service
title: Service
---

## Start

1. Wash your hands.
2. Do this with care:

   1. Wait.
   2. Think.

   ::perform{procedure=guard-off in-place}

## Oil

1. ::perform{procedure=guard-off part=lift in-place}
2. ::perform{procedure=stop}
3. Look at [the oil](#oil).

::perform{procedure=guard-off in-place}
`;

const stop = '---\nprocedure: stop\ntitle: Stop\n---\n\n1. Stop it.\n';

const files = (others: Readonly<Record<string, string>>) => ({
  'manual.yaml': 'title: T\n',
  'machines/mill.yaml': machine,
  'stop.md': stop,
  ...others,
});
const book = bookOf(files({ 'guard-off.md': guardOff, 'service.md': service }));
const sheet = sheetIn(book, 'service');
const body = elementsOf(sheet.bodyHtml);
const numbers = (elements: readonly Element[]) =>
  elements.flatMap(({ attributes }) => attributes['data-step'] ?? []);
const links = (elements: readonly Element[], words: string) =>
  elements.flatMap(({ name, text, attributes }) =>
    name === 'a' && text === words ? [attributes.href] : [],
  );
const stepIn = (number: string) => byId(body, `step-${number}`);

describe('a job in place', () => {
  test('has its steps numbered under the step that performs it, after those that stand there', () => {
    expect(numbers(body)).toEqual(
      '1 2 2.1 2.2 2.3 2.4 2.4.1 2.5 3 3.1 3.1.1 4 5 6 6.1 6.2 6.2.1 6.3'.split(' '),
    );
    expect(sheet.steps).toBe(6);
  });

  test('stands below the words of the step with title, number, phases, hazards and margin boxes', () => {
    const [outer] = [stepIn('2')];
    const title = byId(outer.inner, 'in-2-job');
    expect(title.name).toBe('h3');
    expect(title.text).toBe('Take the guard off (guard-off)');
    expect(links(outer.inner, 'Take the guard off')).toEqual([
      '../../procedures/guard-off/index.html',
    ]);
    const [job] = withClass(outer.inner, 'in-place');
    expect(job?.attributes['aria-labelledby']).toBe('in-2-job');
    const inside = job?.inner ?? [];
    expect(inside.filter(({ name }) => name === 'h4').map(({ text }) => text)).toEqual([
      'Before',
      'Lift',
      'Done',
    ]);
    expect(withClass(stepIn('2.4').inner, 'hazard')).toHaveLength(1);
    expect(withClass(stepIn('2.4').inner, 'mass')[0]?.text).toBe('guard22 kg (49 lb)');
    expect(stepIn('2.4').inner[1]?.attributes['aria-label']).toBe('Step 2.4 done');
    expect(withClass(outer.inner, 'reference')).toHaveLength(0);
  });

  test('gives every id once, and every link on the sheet leads to one', () => {
    const ids = body.flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const hrefs = body.flatMap(({ attributes }) => attributes.href ?? []);
    for (const href of hrefs.filter((one) => one.startsWith('#')))
      expect(ids).toContain(href.slice(1));
    for (const { attributes } of body) {
      const label = attributes['aria-labelledby'];
      if (label !== undefined) expect(ids).toContain(label);
    }
  });

  test('leads to places of its own where they are printed, else to its own sheet', () => {
    expect(links(stepIn('2').inner, 'comes to an end')).toEqual(['#in-2-phase-done']);
    expect(links(stepIn('6').inner, 'comes to an end')).toEqual(['#in-6-phase-done']);
    expect(links(stepIn('2').inner, 'the whole')).toEqual(['#in-2-job']);
    expect(links(stepIn('2').inner, 'the service')).toEqual([
      '../../procedures/service/index.html#phase-oil',
    ]);
    expect(links(stepIn('5').inner, 'the oil')).toEqual(['#phase-oil']);
    expect(links(stepIn('2.4').inner, 'step 2.3')).toEqual(['#step-2.3']);
    expect(links(stepIn('3.1').inner, 'step 1 of guard-off')).toEqual([
      '../../procedures/guard-off/index.html#step-1',
    ]);
  });

  test('of a part has only that section', () => {
    const own = stepIn('3').inner;
    expect(byId(own, 'in-3-job').text).toBe('“Lift” of Take the guard off (guard-off)');
    expect(withClass(own, 'phase').map(({ attributes }) => attributes.id)).toEqual([
      'in-3-phase-lift',
    ]);
  });

  test('has its figures counted with those of the sheet', () => {
    const figures = withClass(body, 'with-key').map(({ attributes }) => attributes.id);
    expect(figures).toEqual(['figure-1', 'figure-2']);
    expect(withClass(stepIn('6.2').inner, 'shown')[0]?.attributes.href).toBe('#figure-2-1');
    expect(withClass(stepIn('3.1').inner, 'shown')).toHaveLength(0);
  });

  test('is no sheet to have at hand; the step inside it is where a second person is needed', () => {
    expect(sheet.performs.map(({ text }) => text)).toEqual(['Stop']);
    expect(sheet.crew.map(({ steps }) => steps)).toEqual([
      ['2.4', '3.1', '6.2'].map((text) => ({
        href: `procedures/service/index.html#step-${text}`,
        text,
      })),
    ]);
    expect(sheet.time).toBe('at least 15\u00a0min');
  });

  test('is told by its number in the data for programs, without its steps', () => {
    expect(sheet.dataFile.content.match(/"inPlace": true/g)).toHaveLength(3);
    expect(sheet.dataFile.content).not.toContain('Note the hour');
  });
});

test('two jobs in place in one step go on counting, each with ids of its own', () => {
  const pair = `---\nprocedure: pair\ntitle: Pair\n---\n\n1. Both:\n\n   ::perform{procedure=guard-off part=lift in-place}\n\n   ::perform{procedure=guard-off part=lift in-place}\n`;
  const { bodyHtml } = sheetIn(
    bookOf(files({ 'guard-off.md': guardOff, 'pair.md': pair })),
    'pair',
  );
  const elements = elementsOf(bodyHtml);
  expect(numbers(elements)).toEqual(['1', '1.1', '1.1.1', '1.2', '1.2.1']);
  const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
  expect(ids).toContain('in-1-phase-lift');
  expect(ids).toContain('in-1-2-phase-lift');
  expect(new Set(ids).size).toBe(ids.length);
});

const perform = (id: string, next: string, title = 'Go') =>
  `---\nprocedure: ${id}\ntitle: ${id}\n---\n\n## ${title}\n\n1. ::perform{procedure=${next} in-place}\n`;

test('a job that performs itself ends in a reference', () => {
  const loop = bookOf(files({ 'a.md': perform('a', 'b'), 'b.md': perform('b', 'a') }));
  const elements = elementsOf(sheetIn(loop, 'a').bodyHtml);
  expect(numbers(elements)).toEqual(['1', '1.1']);
  expect(withClass(elements, 'reference')[0]?.text).toBe('Do a (a), 1 step, then come back here.');
  expect(sheetIn(loop, 'a').performs.map(({ text }) => text)).toEqual(['a']);
});

test('jobs stand in each other down to four levels, the next one by reference', () => {
  const chain = ['a', 'b', 'c', 'd', 'e', 'f'];
  const texts = chain.map((id, i) => {
    const next = chain[i + 1];
    return [`${id}.md`, next === undefined ? stop.replaceAll('stop', id) : perform(id, next)];
  });
  const elements = elementsOf(sheetIn(bookOf(files(Object.fromEntries(texts))), 'a').bodyHtml);
  expect(numbers(elements)).toEqual(['1', '1.1', '1.1.1', '1.1.1.1', '1.1.1.1.1']);
  expect(withClass(elements, 'in-place')).toHaveLength(4);
  expect(withClass(elements, 'reference')[0]?.text).toMatch(/^Do Stop \(f\)/);
  const ranks = elements.map(({ name }) => name).filter((name) => /^h\d$/.test(name));
  expect(ranks.slice(0, 6)).toEqual(['h2', 'h3', 'h4', 'h5', 'h6', 'h6']);
});

test('done at another place it names that place, and says how its words are meant', () => {
  const turn = `---
procedure: turn
title: Turn the stones
---

## Left stone

1. :remove[Take the left stone off]{item=stone each=left}
2. :install{item=stone each=left}
3. :check{item=stone}

## Right stone

1. ::perform{procedure=turn part=left-stone each=right in-place}
`;
  const elements = elementsOf(sheetIn(bookOf(files({ 'turn.md': turn })), 'turn').bodyHtml);
  expect(numbers(elements)).toEqual(['1', '2', '3', '4', '4.1', '4.2', '4.3']);
  const said = (number: string) =>
    withClass(byId(elements, `step-${number}`).inner, 'action')[0]?.text;
  expect([said('1'), said('4.1'), said('4.2')]).toEqual([
    'Take the left stone off',
    'Take the left stone off (right)',
    expect.stringContaining('right'),
  ]);
  expect(withClass(elements, 'at-place')[0]?.text).toBe(
    'Place: right. Where its words say “left”, work at “right”.',
  );
  const ticks = (number: string) =>
    byId(elements, `step-${number}`).inner.flatMap(
      ({ attributes }) => attributes['data-instance'] ?? [],
    );
  expect([ticks('4.1'), ticks('4.3')]).toEqual([[], ['left', 'right']]);
});
