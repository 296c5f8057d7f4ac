/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import MiniSearch from 'minisearch';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { find } from '../../site/scripts/find.ts';
import { launchBrowser } from '../../src/command/browser.ts';
import { searchDocuments, searchIndex } from '../../src/render/index.ts';
import { searchOptions } from '../../src/render/search-options.ts';
import { askedTerms, indexTerms } from '../../src/render/search-terms.ts';
import { draftBook, fixtureBook } from './fixture-book.ts';
import { type Bench, makeBench } from './published.ts';

describe('the words of the search', () => {
  test('find a part number with and without its hyphens, whatever dash is typed', () => {
    expect(indexTerms('Seal LS-3308')).toEqual(['seal', 'ls3308', 'ls', '3308']);
    for (const typed of ['LS-3308', 'ls3308', 'LS–3308', 'ls.3308', 'LS/3308'])
      expect(askedTerms(typed), typed).toEqual(['ls3308']);
    expect(askedTerms('LS 3308')).toEqual(['ls', '3308']);
  });

  test('have no accents and no capitals', () => {
    expect(indexTerms('Entlüftung: ÖL')).toEqual(['entluftung', 'ol']);
  });

  test('of a text are all among those that are indexed of it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const indexed = new Set(indexTerms(text));
        expect(askedTerms(text).filter((term) => !indexed.has(term))).toEqual([]);
      }),
    );
  });
});

describe('the search', () => {
  const json = searchIndex(searchDocuments(fixtureBook));
  const index = MiniSearch.loadJSON(json, searchOptions);
  const titles = (asked: string): string[] => find(index, asked).map(({ title }) => title);

  test('gives the same index for the same book', () => {
    expect(searchIndex(searchDocuments(structuredClone(fixtureBook)))).toBe(json);
  });

  test('finds by part number the item, then the sheets that need it', () => {
    for (const typed of ['LS-3308', 'ls3308', 'LS 3308', 'ls-33'])
      expect(titles(typed), typed).toEqual(['Gland seal', 'Replace the ram seal']);
  });

  test('never takes another number for a slip of the pen', () => {
    expect(titles('LS-3309')).toEqual([]);
    expect(titles('3308-LS')).toEqual([]);
  });

  test('finds words of steps, hazards and facts, forgives a slip, and asks for all words', () => {
    expect(titles('amputation')).toContain('Make the log splitter safe');
    expect(titles('hydrulic')).toContain('Hydraulic oil');
    expect(titles('LS-22-041')[0]).toBe('Check the hose clips');
    expect(titles('gland amputation')).toEqual(['Replace the ram seal']);
    expect(titles('zirconium gland')).toEqual([]);
    expect(titles('  ')).toEqual([]);
  });

  test('puts what is called just so first, and says by which words it was found', () => {
    expect(titles('ram')[0]).toBe('Ram');
    const [seal] = find(index, 'ls3308');
    expect(seal).toEqual({
      href: 'machines/log-splitter/index.html#gland-seal',
      title: 'Gland seal',
      kind: 'Parts',
      detail: 'LS-3308, Log splitter LS-22',
      words: ['ls3308'],
    });
  });
});

describe('the page of the search, opened from disk', () => {
  let bench: Bench;
  let browser: Browser;
  let address: string;

  beforeAll(async () => {
    bench = await makeBench();
    const site = await bench.publish(draftBook, 'site');
    address = pathToFileURL(join(site, 'search/index.html')).href;
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await bench.clear();
  });

  test('answers as a part number is typed, without a request, and leads to the item', async () => {
    const page = await browser.newPage();
    await page.goto(address);
    const requests: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    await page.keyboard.type('ls-3308');
    expect(await page.getByRole('status').textContent()).toBe('2 found');
    expect(requests).toEqual([]);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/machines/log-splitter/index.html#gland-seal');
    await page.close();
  });

  test('takes a question from its address, and says so where nothing is found', async () => {
    const page = await browser.newPage();
    await page.goto(`${address}?q=wedge`);
    expect(await page.getByRole('main').getByRole('listitem').count()).toBeGreaterThan(1);
    await page.getByRole('searchbox').fill('zirconium');
    expect(await page.getByRole('status').textContent()).toBe('Nothing found');
    await page.close();
  });

  test('says that it needs scripts where there are none', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(address);
    expect(await page.locator('.search-off').isVisible()).toBe(true);
    expect(await page.getByRole('searchbox').count()).toBe(0);
    await context.close();
  });
});
