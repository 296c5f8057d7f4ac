/// <reference lib="dom" />
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { violations } from './axe.ts';
import { brokenWords } from './broken-words.ts';
import { type DemoBench, makeDemoBench } from './demo-bench.ts';
import { focusStops } from './focus-stops.ts';

let demo: DemoBench;
let browser: Browser;

beforeAll(async () => {
  [demo, browser] = await Promise.all([makeDemoBench(), launchBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await demo.clear();
});

/** One page of each type. */
const pages = {
  'the contents': '',
  'a long sheet with branches': 'procedures/replace-feed-rollers/',
  'a sheet with figures': 'procedures/replace-drum-bearings/',
  'a sheet with both sides': 'procedures/replace-hub-bearings/',
  'a sheet with a way to choose and both sides': 'procedures/replace-brake-shoes/',
  'a sheet with jobs in place': 'procedures/replace-battery/',
  'a sheet with steps for some machines': 'procedures/yearly-inspection/',
  'the torque chart': 'torque-chart/',
  'the fluids': 'fluids/',
  'the tools': 'tools/',
  'the parts': 'parts/',
  'the hazards': 'hazards/',
  'the signal words': 'signal-words/',
  'a machine': 'machines/brush-chipper/',
  'the rules': 'rules/',
  'a family of rules': 'rules/values/',
  'the findings': 'findings/',
  'the search': 'search/',
  'the guide': 'guide/',
  'the guide to the program': 'guide/program/',
  'the pull lists': 'pull-lists/',
  'the charts': 'charts/',
} as const;

/** Opened from disk, where a browser allows least. */
const fileOf = (path: string): string => (path.endsWith('.html') ? path : `${path}index.html`);
const address = (path: string): string => pathToFileURL(join(demo.site, fileOf(path))).href;

interface Visit {
  readonly page: Page;
  /** What the browser had to say of the pages, and files that it did not get. */
  readonly complaints: string[];
  /** Addresses asked for. */
  readonly asked: string[];
}

async function visit(width: number, colorScheme: 'light' | 'dark' = 'light'): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => complaints.push(`${page.url()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`));
  page.on('requestfailed', (request) => complaints.push(`not loaded: ${request.url()}`));
  page.on('response', (answer) => {
    if (answer.status() >= 400) complaints.push(`${answer.status()}: ${answer.url()}`);
  });
  page.on('request', (request) => asked.push(request.url()));
  await page.addInitScript(() => {
    const moved: string[] = [];
    Reflect.set(window, 'moved', moved);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const sources: readonly { readonly node: Node | null }[] = Reflect.get(entry, 'sources');
        const parts = sources.map(({ node }) => node instanceof Element && node.className);
        moved.push(`${Reflect.get(entry, 'value')}: ${parts.join(', ')}`);
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
  return { page, complaints, asked };
}

/** Two pictures later, so that whatever moves has moved. */
const settled = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
      }),
  );

describe.each([
  [390, 'light'],
  [820, 'light'],
  [1280, 'dark'],
] as const)('every type of page, %i px wide, %s', (width, scheme) => {
  let on: Visit;
  beforeAll(async () => {
    on = await visit(width, scheme);
  });
  afterAll(() => on.page.context().close());

  test.each(Object.entries(pages))('%s', async (_, path) => {
    const { page, complaints, asked } = on;
    await page.goto(address(path));
    await settled(page);
    const { needed, moved, policy } = await page.evaluate(() => ({
      needed: document.documentElement.scrollWidth,
      moved: Reflect.get(window, 'moved'),
      policy: document.querySelector('meta[http-equiv="Content-Security-Policy" i]'),
    }));
    expect(needed, 'no scrolling sideways').toBeLessThanOrEqual(width);
    expect(moved, 'nothing moves while it loads').toEqual([]);
    expect(policy).not.toBeNull();
    expect(await brokenWords(page), 'no word is broken').toEqual([]);
    // Between phone and desk only sheets look otherwise than on one of them.
    if (width !== 820 || path.startsWith('procedures/')) expect(await violations(page)).toEqual([]);
    expect(complaints.splice(0)).toEqual([]);
    const elsewhere = asked
      .splice(0)
      .filter((url) => !url.startsWith(pathToFileURL(demo.site).href) && !url.startsWith('data:'));
    expect(elsewhere, 'no request to another host').toEqual([]);
  });
});

test('a phone and a tablet in the dark look, and a desk in the light one, are no worse to read', async () => {
  for (const [width, scheme] of [
    [390, 'dark'],
    [820, 'dark'],
    [1280, 'light'],
  ] as const) {
    const { page } = await visit(width, scheme);
    await page.goto(address('procedures/replace-brake-shoes/'));
    expect(await violations(page), `${width} ${scheme}`).toEqual([]);
    await page.context().close();
  }
});

describe('with the keyboard alone', () => {
  test.each([
    '',
    'procedures/replace-brake-shoes/',
    'procedures/replace-drum-bearings/',
    'torque-chart/',
    'search/',
    'pull-lists/',
    'findings/',
  ])('Tab comes to all that can be worked, in the order of reading: /%s', async (path) => {
    const { page } = await visit(820);
    await page.goto(address(path));
    const { expected, reached, unseen } = await focusStops(page);
    expect(expected.length).toBeGreaterThan(5);
    expect(reached).toEqual(expected);
    expect(unseen, 'the focus is to be seen at each').toEqual([]);
    await page.context().close();
  });
});

describe('what a device has to load', () => {
  const kib = 1024;

  /** Bytes of a page with its styles and scripts, as they are and as a web server packs them. Figures are not in it. */
  async function weigh(path: string) {
    const html = await readFile(join(demo.site, fileOf(path)));
    const links = html
      .toString()
      .matchAll(/<(?:link rel="stylesheet" href|script[^>]* src)="([^"]+)"/g);
    const files = [...links]
      .map(([, href = '']) => fileURLToPath(new URL(href, address(path))))
      // The index of the search is data, and of its page only.
      .filter((file) => !file.endsWith('search-index.js'));
    const parts = await Promise.all(
      files.map(async (file) => ({ file, text: await readFile(file) })),
    );
    const scripts = parts.filter(({ file }) => file.endsWith('.js')).map(({ text }) => text);
    const all = [html, ...parts.map(({ text }) => text)];
    return {
      html: html.length,
      all: bytes(all),
      scripts: bytes(scripts),
      packed: packed(all),
      packedScripts: packed(scripts),
    };
  }
  const bytes = (texts: readonly Buffer[]): number =>
    texts.reduce((sum, { length }) => sum + length, 0);
  const packed = (texts: readonly Buffer[]): number => bytes(texts.map((text) => gzipSync(text)));

  test('a page with its styles and scripts is below 150 KiB, packed below 40', async () => {
    for (const path of Object.values(pages)) {
      const { html, all, packed } = await weigh(path);
      // The page of a machine has a row for each of more than 200 entries: 160 KiB for these alone.
      if (path.startsWith('machines/')) expect(html, path).toBeLessThan(160 * kib);
      else expect(all, path).toBeLessThan(150 * kib);
      expect(packed, path).toBeLessThan(40 * kib);
    }
  });

  /*
   * All of it before the first touch: the boxes are matched with the kept job by the words of their steps
   * before the choice of a machine changes these, and what is not for the machine is gone before one reads it.
   */
  test('scripts are below 15 KiB packed, and below 25 KiB as they are', async () => {
    for (const path of Object.values(pages)) {
      const { scripts, packedScripts } = await weigh(path);
      expect(packedScripts, path).toBeLessThan(15 * kib);
      expect(scripts, path).toBeLessThan(25 * kib);
    }
  });
});
