import { describe, expect, test } from 'vitest';
import { makeBook } from '../../src/render/index.ts';
import { checked, manualFrom } from '../manuals/manual-from.ts';
import { bookOf, sheetIn } from './linked-manual.ts';
import { pumpManual } from './pump-manual.ts';

/**
 * The part of the vocabulary of schema.org that the sheets use: for each type the properties that it has there,
 * its own and those of CreativeWork, ItemList, ListItem and Thing above it, each with the types of its values.
 * Source: the definitions at schema.org of HowTo, HowToSection, HowToStep, HowToDirection, HowToTip, HowToTool,
 * HowToSupply, QuantitativeValue, Organization and Book (compared with the types of schema-dts 2.1.0).
 */
const vocabulary: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  HowTo: {
    name: ['Text'],
    description: ['Text'],
    identifier: ['Text'],
    version: ['Text', 'Number'],
    inLanguage: ['Text'],
    url: ['URL'],
    isPartOf: ['Book'],
    publisher: ['Organization'],
    totalTime: ['Duration'],
    tool: ['HowToTool'],
    supply: ['HowToSupply'],
    // "A single step item (as HowToStep, text, document, video, etc.) or a HowToSection"; HowToTip is a CreativeWork.
    step: ['HowToSection', 'HowToStep', 'HowToTip'],
  },
  HowToSection: {
    name: ['Text'],
    url: ['URL'],
    itemListElement: ['HowToStep', 'HowToTip'],
  },
  HowToStep: {
    position: ['Text', 'Number'],
    url: ['URL'],
    text: ['Text'],
    itemListElement: ['HowToDirection', 'HowToTip'],
  },
  HowToDirection: { text: ['Text'] },
  HowToTip: { text: ['Text'] },
  HowToTool: { name: ['Text'], requiredQuantity: ['Number', 'QuantitativeValue'] },
  HowToSupply: { name: ['Text'], requiredQuantity: ['Number', 'QuantitativeValue'] },
  QuantitativeValue: { value: ['Number'], unitText: ['Text'] },
  Organization: { name: ['Text'] },
  Book: { name: ['Text'] },
};

/** ISO 8601: hours and minutes. */
const duration = /^PT(?=\d)(\d+H)?(\d+M)?$/;

function faultsOf(value: unknown, path: string): string[] {
  if (typeof value !== 'object' || value === null || !('@type' in value))
    return [`${path} has no type`];
  const type = String(value['@type']);
  const known = vocabulary[type];
  if (known === undefined) return [`${path}: ${type} is no type of schema.org that is known here`];
  return Object.entries(value)
    .filter(([key]) => !key.startsWith('@'))
    .flatMap(([key, inner]) => {
      const types = known[key];
      const at = `${path}.${key}`;
      if (types === undefined) return [`${at} is no property of ${type}`];
      const all: readonly unknown[] = Array.isArray(inner) ? inner : [inner];
      return all.flatMap((one, i) => valueFaults(one, types, `${at}[${i}]`));
    });
}

function valueFaults(value: unknown, types: readonly string[], path: string): string[] {
  if (typeof value === 'number')
    return types.includes('Number') && Number.isFinite(value)
      ? []
      : [`${path} may not be a number`];
  if (typeof value === 'string') {
    if (types.includes('Duration'))
      return duration.test(value) ? [] : [`${path} is no duration: ${value}`];
    if (types.includes('URL'))
      return URL.canParse(value, 'https://x.example/') ? [] : [`${path} is no URL`];
    return types.includes('Text') && value !== '' ? [] : [`${path} may not be “${value}”`];
  }
  const type =
    typeof value === 'object' && value !== null && '@type' in value ? value['@type'] : '';
  return types.includes(String(type)) ? faultsOf(value, path) : [`${path} may not be a ${type}`];
}

test('every sheet of the demo manual keeps to the vocabulary', async () => {
  const { linked, report } = checked(await manualFrom('demo'));
  const { sheets } = makeBook(linked, report, { draft: false });
  const data = sheets.map(({ howTo }): unknown => JSON.parse(howTo));
  expect(data.length).toBeGreaterThan(30);
  expect(data.flatMap((one) => faultsOf(one, 'HowTo'))).toEqual([]);
  for (const one of data)
    expect(one).toMatchObject({ '@context': 'https://schema.org', '@type': 'HowTo' });
});

test('the check of the vocabulary finds what schema.org does not have', () => {
  const wrong = {
    '@type': 'HowTo',
    name: 'x',
    totalTime: '5 min',
    steps: [],
    tool: { '@type': 'Book' },
  };
  expect(faultsOf(wrong, 'HowTo')).toEqual([
    'HowTo.totalTime[0] is no duration: 5 min',
    'HowTo.steps is no property of HowTo',
    'HowTo.tool[0] may not be a Book',
  ]);
});

describe('the procedure of an invented pump', () => {
  const howToOf = (yaml: string, id: string) =>
    JSON.parse(
      sheetIn(bookOf({ ...pumpManual, 'manual.yaml': `${pumpManual['manual.yaml']}${yaml}` }), id)
        .howTo,
    );

  test('has its steps with their sections, hazards and figures', () => {
    const { step, totalTime } = howToOf('', 'replace-impeller');
    // Steps 1 to 3.1 of the removal have no time, so that a sum would be too small.
    expect(totalTime).toBeUndefined();
    expect(step.map((one: { name?: string }) => one.name)).toEqual([
      undefined,
      'Removal',
      'Reassembly',
    ]);
    const [, removal, reassembly] = step;
    expect(removal.itemListElement[3]).toMatchObject({
      position: '4',
      url: '#step-4',
      itemListElement: [
        {
          '@type': 'HowToTip',
          text: 'DANGER: The impeller can turn. Amputation. Lock the shaft.',
        },
        { '@type': 'HowToTip', text: 'NOTICE: Grit. Scored seal. Keep it clean.' },
        { '@type': 'HowToDirection' },
      ],
    });
    // The writer's words do not say the torque; whoever reads this text has no margin beside it.
    expect(reassembly.itemListElement[3].text).toContain('(cover bolt: 45 N·m (33 lbf·ft))');
  });

  test('has whole addresses where the manual has one', () => {
    const { url, step } = howToOf('address: https://p40.example/manual\n', 'replace-impeller');
    const page = 'https://p40.example/manual/procedures/replace-impeller/index.html';
    expect(url).toBe(page);
    expect(step[1].url).toBe(`${page}#phase-removal`);
    expect(step[1].itemListElement[0].url).toBe(`${page}#step-1`);
  });
});

describe('the time of a job', () => {
  const timeOf = (...times: readonly string[]) => {
    const steps = times.map((time) => `1. Wait.\n   ::step{${time}}\n`).join('');
    const page = `---\nprocedure: p\ntitle: P\n---\n\n${steps}`;
    const book = bookOf({ 'manual.yaml': 'title: T\n', 'p.md': page });
    return JSON.parse(sheetIn(book, 'p').howTo).totalTime;
  };

  // ISO 8601-1, durations.
  test.each([
    [['time="50 min"', 'time="30 min" wait="1 h"'], 'PT2H20M'],
    [['time="45 min"'], 'PT45M'],
    [['time="2 h"'], 'PT2H'],
    [['time="90 s"'], 'PT2M'],
  ])('%j is %s', (times, duration) => {
    expect(timeOf(...times)).toBe(duration);
  });

  test('is left out where a step has none, since the sum would be too small', () => {
    expect(timeOf('time="50 min"', '#untimed')).toBeUndefined();
  });
});

test('nothing that a writer says can end the script that it stands in', () => {
  const attack = '</script><script>alert(1)</script><!-- \u2028 ]]> \u202e & 🔧';
  const page = `---\nprocedure: p\ntitle: ${JSON.stringify(attack)}\nsummary: ${JSON.stringify(attack)}\n---\n\n1. Say \`${attack}\`.\n`;
  const { howTo, dataFile } = sheetIn(bookOf({ 'manual.yaml': 'title: T\n', 'p.md': page }), 'p');
  expect(howTo).not.toMatch(/[<>&\u2028\u2029]/);
  expect(JSON.parse(howTo)).toMatchObject({ name: attack, description: attack });
  expect(JSON.parse(dataFile.content).title).toBe(attack);
});
