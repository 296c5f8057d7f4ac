import { describe, expect, test } from 'vitest';
import { elementsOf, withClass } from './html-tree.ts';
import { bookOf, sheetIn } from './linked-manual.ts';

const machine = `machine: m
name: M
connections:
  cooler-hose: { name: cooler hose, type: hose, circuit: oil, loss: 0.5 L }
circuits:
  coolant:
    name: coolant
    fluid: glycol coolant
    capacity: 10 L
    mix: { concentrate: 50 %, water: 50 % }
    base: ethylene-glycol
    never-with: [oil, red-coolant]
    dispose: Give it to a collector
  strong: { name: heater fluid, fluid: glycol, capacity: 10 L, mix: { concentrate: 80 % }, base: propylene-glycol }
  oil: { name: gear oil, fluid: ISO VG 150, capacity: 38 L }
consumables:
  red-coolant: { name: red coolant }
  concentrate: { name: concentrate, specification: C2 }
`;

const book = (body: string, front = '') =>
  bookOf({
    'manual.yaml': 'title: T\nunits: { volume: [L], temperature: [°C, °F] }\n',
    'machines/m.yaml': machine,
    'p.md': `---\nprocedure: p\ntitle: P\n${front}---\n\n${body}\n`,
  });
const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ');
const box = (body: string) =>
  plain(withClass(elementsOf(sheetIn(book(body), 'p').bodyHtml), 'fluid')[0]?.text);

describe('the fluid box', () => {
  // 50 % by volume: −37 °C (ASHRAE Handbook, Fundamentals, ethylene glycol).
  test('says at what the mix freezes, by which table, and what rules', () => {
    expect(box('1. :fill{item=coolant}')).toContain(
      'Freezes at about −37 °C (−35 °F)Pure ethylene glycol and water, ASHRAE Handbook, Fundamentals. The table of the maker of the concentrate rules.',
    );
  });

  test('never guesses beyond the table', () => {
    expect(box('1. :fill{item=strong}')).toContain(
      'Freezing point not known: the table covers 5 % to 50 %',
    );
  });

  test('works the mix out for the amount that is poured in', () => {
    const text = box('1. :fill{item=coolant amount="3 L"}');
    expect(text).toContain('In: coolant3 L');
    expect(text).toContain('concentrate50 %1.5 Lwater50 %1.5 L');
  });

  test('of a fill with one part of the mix asks for that alone', () => {
    const text = box('1. :fill{item=coolant amount="3 L" with=concentrate}');
    expect(text).toContain('In: coolant3 Lconcentrate, C2');
    expect(text).not.toContain('Mix');
    expect(text).not.toContain('Freezes');
  });

  test('and the list of what to fetch has that alone', () => {
    const sheet = sheetIn(
      book(
        '1. :drain{item=coolant amount="3 L"}\n2. :fill{item=coolant amount="3 L" with=concentrate}',
      ),
      'p',
    );
    expect(sheet.fluidPulls).toEqual([]);
    expect(sheet.consumables.map(({ item }) => item.text)).toEqual(['concentrate']);
  });

  test('warns of what must not get into the circuit, where it is filled and not where it is drained', () => {
    expect(box('1. :fill{item=coolant}')).toContain('Never mix with gear oil or red coolant');
    expect(box('1. :drain{item=coolant}')).not.toContain('Never mix');
  });
});

describe('the page of fluids', () => {
  const row = (id: string) => {
    const found = book('1. :check{item=oil}').fluids.find(({ anchor }) => anchor === `m-${id}`);
    if (found === undefined) throw new Error(`no row of ${id}`);
    return found;
  };

  test('says how much is drained and replaced: V·(target − now)/(1 − now), or V·(now − target)/now', () => {
    expect(
      row('coolant').corrections.map(({ measured, replace, by }) => [measured, plain(replace), by]),
    ).toEqual([
      ['0 %', '5.0 L', 'concentrate'], // 10·0.5/1
      ['10 %', '4.4 L', 'concentrate'], // 10·0.4/0.9 = 4.44
      ['20 %', '3.8 L', 'concentrate'], // 10·0.3/0.8 = 3.75
      ['30 %', '2.9 L', 'concentrate'], // 10·0.2/0.7 = 2.857
      ['40 %', '1.7 L', 'concentrate'], // 10·0.1/0.6 = 1.667
      ['60 %', '1.7 L', 'water'], // 10·0.1/0.6 = 1.667
      ['70 %', '2.9 L', 'water'], // 10·0.2/0.7 = 2.857
    ]);
  });

  // ASHRAE Handbook, Fundamentals: 20.1 % −8.9 °C, 29.6 % −15.4 °C, 39.5 % −24.3 °C; never colder than the table.
  test('says what a measured mix freezes at, inside the table', () => {
    expect(row('coolant').corrections.map(({ freezes }) => plain(freezes))).toEqual([
      '0 °C (32 °F)',
      '−3 °C (27 °F)',
      '−8 °C (18 °F)',
      '−15 °C (5 °F)',
      '−24 °C (−11 °F)',
      undefined,
      undefined,
    ]);
  });

  test('has nothing to correct where there is no mix', () => {
    expect(row('oil')).toMatchObject({ corrections: [], freezing: undefined, neverWith: [] });
    expect(row('coolant').neverWith).toEqual(['gear oil', 'red coolant']);
  });
});

describe('waste to collect', () => {
  const waste = (body: string, front?: string) =>
    sheetIn(book(body, front), 'p').waste.map(({ item, volume, dispose }) => [
      item.text,
      plain(volume),
      dispose,
    ]);

  test.each<[string, string, string]>([
    ['all of it', '1. :drain{item=oil}\n2. :fill{item=oil}', 'about 38 L'],
    ['a part', '1. :drain{item=oil amount="5 L"}\n2. :fill{item=oil amount="5 L"}', 'about 5 L'],
    [
      'out of a line',
      '1. :disconnect{item=cooler-hose}\n2. :connect{item=cooler-hose}',
      'about 0.5 L',
    ],
  ])('%s', (_, body, volume) => {
    expect(waste(body)).toEqual([['gear oil', volume, undefined]]);
  });

  test('to two digits', () => {
    const twice = '1. :drain{item=oil}\n2. :fill{item=oil}\n3. :drain{item=oil amount="6.5 L"}\n';
    expect(waste(twice)).toEqual([['gear oil', 'about 45 L', undefined]]);
    const often = `${'1. :drain{item=oil}\n2. :fill{item=oil}\n'.repeat(3)}`;
    expect(waste(often)).toEqual([['gear oil', 'about 110 L', undefined]]);
    expect(waste('1. :drain{item=oil amount="0.55 L"}')).toEqual([
      ['gear oil', 'about 0.55 L', undefined],
    ]);
  });

  test('no figure where it comes out round after round', () => {
    const steps = '1. :drain{item=oil amount="10 L"}\n2. :fill{item=oil amount="10 L"}\n';
    expect(waste(steps)).toEqual([['gear oil', 'about 10 L', undefined]]);
    expect(waste(`:::repeat[until it runs clear]\n${steps}:::\n`)).toEqual([
      ['gear oil', undefined, undefined],
    ]);
  });

  test('with what becomes of it, in order of work', () => {
    expect(waste('1. :drain{item=coolant}\n2. :drain{item=oil}')).toEqual([
      ['coolant', 'about 10 L', 'Give it to a collector'],
      ['gear oil', 'about 38 L', undefined],
    ]);
  });

  test('none where nothing comes out', () => {
    expect(waste('1. :fill{item=oil}', 'starts: { oil: drained }\n')).toEqual([]);
    expect(
      waste(
        '1. :disconnect{item=cooler-hose}\n2. :connect{item=cooler-hose}',
        'starts: { oil: drained }\n',
      ),
    ).toEqual([]);
  });
});
