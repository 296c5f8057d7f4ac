import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { draftBook, fixtureBook } from './fixture-book.ts';
import { type Bench, makeBench, textsBelow } from './published.ts';
import { leadsSomewhere, references } from './references.ts';

let bench: Bench;
let site: ReadonlyMap<string, string>;
let draft: ReadonlyMap<string, string>;

beforeAll(async () => {
  bench = await makeBench();
  site = await textsBelow(await bench.publish(fixtureBook, 'clean'));
  draft = await textsBelow(await bench.publish(draftBook, 'draft'));
});
afterAll(() => bench.clear());

const page = (path: string, from = site): string => from.get(path) ?? `no page ${path}`;
const words = (html: string): string => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

describe('a published site', () => {
  test('has a page for each sheet and machine, the charts, the guide, their styles, the figures and nothing else', () => {
    const paths = [...site.keys()].map((path) =>
      path.replace(/^assets\/(\w+)\.[\w-]+\.css$/, 'assets/$1.css'),
    );
    expect(paths).toEqual([
      '.tallybolt-site',
      'assets/guide.css',
      'assets/page.js',
      'assets/search-index.js',
      'assets/search.js',
      'assets/sheet.js',
      'assets/site.css',
      'charts/index.html',
      'figures/rod.svg',
      'findings/index.html',
      'fluids/index.html',
      'guide/index.html',
      'guide/program/index.html',
      'hazards/index.html',
      'index.html',
      'machines/log-splitter/index.html',
      'offline.js',
      'parts/index.html',
      'procedures/check-hoses/index.html',
      'procedures/check-hoses/procedure.json',
      'procedures/check-hoses/pull-list.csv',
      'procedures/check-hoses/pull-list.json',
      'procedures/make-safe/index.html',
      'procedures/make-safe/procedure.json',
      'procedures/make-safe/pull-list.csv',
      'procedures/make-safe/pull-list.json',
      'procedures/replace-ram-seal/index.html',
      'procedures/replace-ram-seal/procedure.json',
      'procedures/replace-ram-seal/pull-list.csv',
      'procedures/replace-ram-seal/pull-list.json',
      'pull-lists/index.html',
      'rules/balance/index.html',
      'rules/index.html',
      'rules/links/index.html',
      'search/index.html',
      'signal-words/index.html',
      'sitemap.xml',
      'tools/index.html',
      'torque-chart/index.html',
    ]);
  });

  test('has the same bytes when it is published again', async () => {
    expect(await textsBelow(await bench.publish(fixtureBook, 'again'))).toEqual(site);
  });

  test('has no link, figure or style that leads nowhere', () => {
    const broken = [...site].flatMap(([path, html]) =>
      path.endsWith('.html')
        ? references(html)
            .filter((ref) => !leadsSomewhere(site, path, ref))
            .map((ref) => `${path}: ${ref}`)
        : [],
    );
    expect(broken).toEqual([]);
    expect(references(page('procedures/replace-ram-seal/index.html'))).toContain(
      '../../machines/log-splitter/index.html#gland-seal',
    );
  });

  test('has every id once a page', () => {
    for (const [path, html] of site) {
      const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
      expect(ids, path).toEqual([...new Set(ids)]);
    }
  });

  test('keeps styles and scripts out of its pages, as its policy says', () => {
    for (const [path, html] of site) {
      if (!path.endsWith('.html')) continue;
      expect(html, path).toContain("default-src 'none'; style-src 'self'");
      // A data block is no script: no browser runs it, and the policy does not speak of it.
      const code = html.replace(/<script type="application\/ld\+json">[^<]*<\/script>/, '');
      expect(code, path).not.toMatch(/<style|\sstyle="|<script(?![^>]*\ssrc=)|\son\w+="/);
    }
  });

  test('has each procedure for programs beside its sheet, and in the words of schema.org in it', () => {
    for (const { href, dataFile, howTo } of fixtureBook.sheets) {
      expect(page(dataFile.href), href).toBe(dataFile.content);
      expect(references(page(href))).toContain(`../../${dataFile.href}`);
      const block = /<script type="application\/ld\+json">([^<]*)<\/script>/.exec(page(href))?.[1];
      expect(JSON.parse(block ?? ''), href).toEqual(JSON.parse(howTo));
    }
  });

  test('has a sitemap of all its pages at the address of the manual', () => {
    const pages = [...site.keys()].filter((path) => path.endsWith('.html'));
    const listed = page('sitemap.xml').match(/(?<=<loc>)[^<]*(?=<\/loc>)/g);
    expect(listed).toEqual(pages.map((path) => `https://manuals.example.org/ls-22/${path}`));
  });

  test('has the pull list of each sheet beside it, byte by byte as the book has it', () => {
    for (const { pullFiles } of fixtureBook.sheets)
      for (const { href, content } of [pullFiles.csv, pullFiles.json])
        expect(page(href), href).toBe(content);
    const sheet = page('procedures/replace-ram-seal/index.html');
    expect(words(sheet)).toContain('Pull list: CSV , JSON');
    expect(references(sheet)).toContain('../../procedures/replace-ram-seal/pull-list.csv');
  });

  test('lists the pull lists of all sheets, with how much is on them', () => {
    expect(words(page('pull-lists/index.html'))).toMatch(
      /LS-22-001 Make the log splitter safe – – – – CSV , JSON .* LS-22-040 Replace the ram seal Only for [^0-9]* 4 3 1 1 CSV , JSON/,
    );
  });

  test('says how many at most, in which containers and when something is needed', () => {
    const sheet = words(page('procedures/replace-ram-seal/index.html'));
    expect(sheet).toMatch(/up to 8 × Gland bolts M12 Only if a thread is torn/);
    expect(sheet).toMatch(/Hydraulic oil 38 L \(10\.0 US gal\), ISO VG 46 2 × 20 L/);
  });

  test('lists the sheets by system with number, steps, people and time', () => {
    expect(words(page('index.html'))).toMatch(
      /General .* LS-22-001 Make the log splitter safe 3 1 8 min .*Hydraulics .* LS-22-040 Replace the ram seal .* 13 2 2 h 10 min to 2 h 40 min LS-22-041 Check the hose clips 40 1 –/,
    );
  });

  test('shows on a sheet what is needed before, and what is signed after', () => {
    const sheet = words(page('procedures/replace-ram-seal/index.html'));
    for (const part of [
      'LS-22-040',
      'Every 1000 hours',
      'DANGER The wedge can move',
      'Lift it with two people or with the sling. Only for engine = diesel',
      '2 people for steps 5 and 9 , 15 min 2 h 10 min Only for engine = petrol',
      '2 h 40 min Only for engine = diesel 2 h 20 min of work and 30 min of waits; 10 min of the waits',
      '1 × Lifting sling 100 kg',
      'Wedge : lowered',
      'Work checked by',
      'Only trained people',
      'Sling added',
    ]) {
      expect(sheet).toContain(part);
    }
  });

  test('gives the alert triangle to the three injury words and never to NOTICE (ANSI Z535.6)', () => {
    const panels = [
      ...page('procedures/replace-ram-seal/index.html').matchAll(/class="hazard (\w+)".*?<\/p>/gs),
    ];
    expect(new Set(panels.map(([, signal]) => signal))).toEqual(
      new Set(['danger', 'warning', 'caution', 'notice']),
    );
    for (const [html, signal] of panels)
      expect(html.includes('<svg'), signal).toBe(signal !== 'notice');
  });

  test('names the sheets that a part of other work belongs to, at the top', () => {
    expect(words(page('procedures/make-safe/index.html'))).toMatch(
      /Make the log splitter safe .*Part of Replace the ram seal Document/,
    );
    expect(words(page('procedures/replace-ram-seal/index.html'))).not.toContain('Part of');
  });

  test('has an index by kind at the top of a machine', () => {
    const machine = page('machines/log-splitter/index.html');
    const [index = ''] = /<nav class="kinds".*?<\/nav>/s.exec(machine) ?? [];
    const targets = [...index.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id);
    const headings = [...machine.matchAll(/<h2 id="(kind-[^"]*)"/g)].map(([, id]) => id);
    expect(targets.length).toBeGreaterThan(1);
    expect(targets).toEqual(['tb-ties', ...headings]);
  });

  test('says where each item is used', () => {
    expect(words(page('machines/log-splitter/index.html'))).toMatch(
      /Gland bolt .*Holds ram .*Replace the ram seal remove, install, torque/,
    );
    expect(words(page('torque-chart/index.html'))).toMatch(
      /Gland bolt 8 M12, class 8\.8, oiled 40 N·m \(30 lbf·ft\) 85 N·m \(63 lbf·ft\) Replace the ram seal/,
    );
    expect(words(page('fluids/index.html'))).toContain('50 % concentrate: 3.1 L (0.8 US gal)');
  });

  test('says plainly that nothing was found', () => {
    expect(page('findings/index.html')).toContain('Nothing to report.');
    expect(page('findings/index.html', draft)).not.toContain('Nothing to report.');
  });

  test('shows each finding with rule, place, message, second place and help, as text', () => {
    const findings = words(page('findings/index.html', draft));
    expect(findings).toMatch(
      /error left-out 4 of 8 gland bolts are still out at the end Place procedures\/hydraulics\/replace-ram-seal\.md:41:4 See procedures\/hydraulics\/replace-ram-seal\.md:66:4 only 4 go back here Sheet Replace the ram seal Variants start = electric Help Put the other 4 back/,
    );
    expect(page('findings/index.html', draft)).toContain('&amp; its &lt;washer&gt;');
  });

  test('lists what the writers let pass, with reason, item, last day, place and count', () => {
    const findings = words(page('findings/index.html', draft));
    expect(findings).toMatch(
      /Waivers .* waived left-out The wedge goes to the grinder .* Place procedures\/general\/make-safe\.md:9:1 Sheet Make the log splitter safe Item wedge Until 2033-01-31 Lets pass 1 finding Finding procedures\/general\/make-safe\.md:14:4 The wedge is still out at the end/,
    );
    expect(page('findings/index.html', draft)).toContain('&lt;sharp&gt;');
    expect(page('findings/index.html')).not.toContain('Waivers');
  });

  test('carries DRAFT on every page of a draft and on none of a clean one', () => {
    for (const [path, html] of draft)
      if (path.endsWith('.html')) expect(html, path).toContain('<span>DRAFT</span>');
    for (const [path, html] of site) expect(html, path).not.toContain('<span>DRAFT</span>');
  });
});
