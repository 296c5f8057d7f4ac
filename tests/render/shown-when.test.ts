import { describe, expect, test } from 'vitest';
import { byId, type Element, elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const settings = `title: T
variants:
  winch: { name: infeed winch, values: [no, yes] }
  brakes: [overrun, none]
never:
  - winch & brakes = none
`;
const machine = `name: Chipper
parts:
  guard: { name: winch guard, mass: 4 kg, single-use: true }
  rope: { name: rope, when: winch }
  belt: { name: belt }
circuits:
  oil: { name: oil, fluid: Oil, capacity: 4 L }
fasteners:
  bolt: { name: bolt, torque: 9 N·m }
tools:
  puller: { name: puller }
hazards:
  snap: { signal: warning, hazard: Rope snaps, harm: Cuts, avoid: Stand aside, when: winch }
`;

const sheetOf = (text: string, front = '') =>
  sheetIn(
    bookOf({
      'manual.yaml': settings,
      'machines/chipper.yaml': machine,
      'p.md': `---\nprocedure: p\ntitle: P\n${front}---\n\n${text}\n`,
      'q.md':
        '---\nprocedure: q\ntitle: Q\n---\n\n1. Look.\n2. Look.\n   ::step{when=winch}\n3. :check[Look]{item=belt when=winch}.\n',
    }),
    'p',
  );
const bodyOf = (text: string) => elementsOf(sheetOf(text).bodyHtml);
const when = (element: Element | undefined) => element?.attributes['data-when'];
const whens = (body: readonly Element[], name: string) => withClass(body, name).map(when);
const step = (body: readonly Element[], number: number) => when(byId(body, `step-${number}`));

const winch = '["=","winch","yes"]';
const noBrakes = '["=","brakes","none"]';

describe('a part of a sheet that is for some machines says so to a program', () => {
  test('a step by its own condition, and by those of all that is in it', () => {
    const body = bodyOf(
      [
        '1. Look.\n   ::step{when=winch}',
        '2. :remove{item=guard when=winch}. :install{item=guard new when=winch}.',
        '3. :::when[brakes = none]\n   Look.\n   :::',
        '4. :remove[Take it off]{item=guard when=winch}, then :remove{item=belt when="brakes = none"}.',
        '5. Look and :check[feel]{item=belt when=winch}.',
        '6. Look.',
      ].join('\n'),
    );
    expect([1, 2, 3, 4, 5, 6].map((number) => step(body, number))).toEqual([
      winch,
      winch,
      noBrakes,
      `["|",${winch},${noBrakes}]`,
      undefined,
      undefined,
    ]);
  });

  test('its words, so that they can go where that machine is chosen', () => {
    const [only] = withClass(bodyOf('1. Look.\n   ::step{when="winch | brakes != none"}'), 'only');
    expect(only?.attributes['data-unless']).toBe(`["|",${winch},["!",${noBrakes}]]`);
  });

  test('actions, sentences and the words that join them', () => {
    const text =
      '1. Look. :remove{item=guard when=winch}. Lift it and :remove{item=belt when=winch}, then look.';
    const body = bodyOf(text);
    expect(whens(body, 'action')).toEqual([winch, winch]);
    expect(withClass(body, 'sentence').map((one) => [when(one), one.text])).toEqual([
      [winch, 'Only for infeed winch: remove the winch guard. '],
    ]);
    const joins = body.filter(({ attributes }) => 'data-join' in attributes);
    expect(joins.map((one) => one.text)).toEqual([' and ', ', then ']);
  });

  test('the boxes of an action, each by the actions that it stands for', () => {
    const body = bodyOf(
      [
        '1. Look. :install[Fit it]{item=guard new when=winch with=puller}. :remove{item=rope}.',
        '2. Turn. :torque{item=bolt when=winch}. :fill{item=oil amount="1 L" when="brakes = none"}.',
        '3. Read. :measure{item=belt value="max 3 mm" when=winch}.',
      ].join('\n'),
    );
    for (const name of ['mass', 'new', 'tools', 'torque', 'reading'])
      expect(whens(body, name), name).toEqual([winch]);
    expect(whens(body, 'fluid')).toEqual([noBrakes]);
  });

  test('what is asked for with and without a condition is there for every machine', () => {
    const body = bodyOf('1. :remove{item=guard when=winch}. :install{item=guard}.');
    expect(whens(body, 'mass')).toEqual([undefined]);
    expect(step(body, 1)).toBeUndefined();
  });

  test('jobs, hazards with that of their entry, blocks and phases', () => {
    const body = bodyOf(
      [
        '## Winch',
        '',
        '::hazard{of=snap}',
        '',
        '::perform{procedure=q when=winch}',
        '',
        '## Brakes',
        '',
        ':::when[brakes = none]',
        '1. Look.',
        ':::',
      ].join('\n'),
    );
    expect(whens(body, 'hazard')).toEqual([winch]);
    expect(whens(body, 'reference')).toEqual([winch]);
    expect(whens(body, 'phase')).toEqual([winch, noBrakes]);
    expect(whens(body, 'guarded')).toEqual([noBrakes]);
    expect(step(body, 1)).toBe(winch);
    expect(step(body, 2)).toBeUndefined();
  });

  test('how many steps a job has on which machine', () => {
    const body = bodyOf('1. ::perform{procedure=q}');
    const counts = body.flatMap(({ attributes }) => attributes['data-count'] ?? []);
    expect(counts).toEqual([`[1,${winch},${winch}]`]);
  });

  test('not what only a technician can find', () => {
    const body = bodyOf(
      '1. Look.\n\n   :::if[it is cracked]\n   :remove{item=belt}.\n   :::\n2. Look.\n   ::step{when=\'"it is cracked"\'}\n3. Look.\n   ::step{when=\'winch & "it is cracked"\'}',
    );
    expect([1, 2, 3].map((number) => step(body, number))).toEqual([
      undefined,
      undefined,
      `["&",${winch},["?"]]`,
    ]);
  });

  test('hazards that guard a list are marked, those of a single step are not', () => {
    const body = bodyOf(
      '::hazard{of=snap}\n\n1. Look.\n   ::step{when=winch}\n2. ::hazard{of=snap}\n   Look.',
    );
    expect(withClass(body, 'hazard').map(({ attributes }) => 'data-guards' in attributes)).toEqual([
      true,
      false,
    ]);
  });
});

test('the rows above the work and the sheet itself have their conditions beside their words', () => {
  const sheet = sheetOf(
    '1. :remove{item=guard when=winch}. :install{item=guard new when=winch with=puller}.\n2. Lift.\n   ::step{people=2 when=winch time="5 min"}\n\n::hazard{of=snap}',
  );
  const conditions = [sheet.parts, sheet.tools, sheet.crew, sheet.hazards].map((rows) =>
    rows.map(({ condition }) => JSON.stringify(condition)),
  );
  expect(conditions).toEqual([[winch], [winch], [winch], [winch]]);
  expect(sheet.times.map(({ condition }) => JSON.stringify(condition))).toEqual([winch]);
  expect(JSON.stringify(sheetOf('1. Look.', 'when: winch\n').condition)).toBe(winch);
  expect(sheet.condition).toBeUndefined();
});
