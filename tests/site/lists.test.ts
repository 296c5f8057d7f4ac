import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { partNumberAnchor } from '../../src/render/part-number-href.ts';
import { draftBook } from './fixture-book.ts';
import { type Bench, makeBench, textsBelow } from './published.ts';
import { references } from './references.ts';

let bench: Bench;
let site: ReadonlyMap<string, string>;

beforeAll(async () => {
  bench = await makeBench();
  site = await textsBelow(await bench.publish(draftBook, 'lists'));
});
afterAll(() => bench.clear());

const page = (path: string): string => site.get(path) ?? `no page ${path}`;
const words = (path: string): string =>
  page(path)
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('the lists of a site', () => {
  test('tell of tools and aids what they are, for which machines, and where they are used', () => {
    expect(words('tools/index.html')).toMatch(
      /Torque wrench 20 to 100 N·m Replace the ram seal .*Lifting sling Only for engine = diesel – no sheet .*Drip trays 2 45 L/i,
    );
  });

  test('tell parts by name and by number', () => {
    const parts = words('parts/index.html');
    expect(parts).toMatch(/Gland seal LS-3308 once only Replace the ram seal/i);
    expect(parts).toMatch(/By part number .*LS-3308 gland seal/);
    expect(references(page('machines/log-splitter/index.html'))).toContain(
      '../../parts/index.html#no.LS-3308',
    );
  });

  test('give each part number an anchor of its own', () => {
    const numbers = ['26-1', '26 1', '26_1', '26/1', '26_20_1', 'Ä1', 'A1', '261'];
    expect(new Set(numbers.map(partNumberAnchor)).size).toBe(numbers.length);
    for (const number of numbers) expect(partNumberAnchor(number)).toMatch(/^[\w.-]+$/);
  });

  test('tell of a hazard what raises it, what comes first and which sheets warn of it', () => {
    expect(words('hazards/index.html')).toMatch(
      /DANGER What DANGER means DANGER The wedge can move under stored pressure\. Crushing or amputation of hands\. .*Raised by any work on wedge ; remove ram , old cover First check key switch Shown in Replace the ram seal/,
    );
    expect(references(page('procedures/replace-ram-seal/index.html'))).toContain(
      '../../hazards/index.html#log-splitter-wedge-moves',
    );
  });

  /* ANSI Z535.6: DANGER, WARNING and CAUTION stand for injury and have the alert symbol; NOTICE does not. From memory. */
  test('explain the four signal words, each with its panel', () => {
    const glossary = page('signal-words/index.html');
    for (const [word, meaning] of [
      ['danger', 'will die or be badly injured'],
      ['warning', 'could die or be badly injured'],
      ['caution', 'could have a minor or moderate injury'],
      ['notice', 'Nobody is hurt'],
    ] as const) {
      const [section = ''] =
        new RegExp(`<section class="signal-word">\\s*<h2 id="tb-${word}".*?</section>`, 's').exec(
          glossary,
        ) ?? [];
      expect(section).toContain(meaning);
      expect(section).toContain(`class="hazard ${word}"`);
      expect(section.includes('<svg'), word).toBe(word !== 'notice');
    }
    expect(words('signal-words/index.html')).toContain('local codes');
  });

  test('link from each finding to its rule, with the examples that explain prints', () => {
    expect(references(page('findings/index.html'))).toContain(
      '../rules/balance/index.html#left-out',
    );
    const balance = page('rules/balance/index.html');
    expect(balance).toContain('id="left-out"');
    expect(balance).toContain('^^^ left-out: 4 of 8 anvil bolts are still out at the end');
    expect(words('rules/index.html')).toMatch(
      /left-out error Fasteners or parts that are taken out/,
    );
  });

  test('are all on the page of charts and lists', () => {
    const linked = references(page('charts/index.html'));
    for (const list of [
      'torque-chart',
      'fluids',
      'tools',
      'parts',
      'pull-lists',
      'hazards',
      'signal-words',
    ])
      expect(linked).toContain(`../${list}/index.html`);
  });

  test('show on the page of a machine what holds what, with links to the rows', () => {
    const machine = page('machines/log-splitter/index.html');
    expect(machine).toMatch(/<svg[^>]*class="ties"[^>]*>.*<a href="#ram">/s);
    expect(words('machines/log-splitter/index.html')).toContain('is a fastener or a connection');
  });
});
