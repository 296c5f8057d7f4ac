/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import type { Book } from '../../src/render/book.ts';
import { pdfPages } from '../pdf-text.ts';
import { draftBook, fixtureBook } from './fixture-book.ts';
import { type Bench, makeBench } from './published.ts';

let bench: Bench;
let browser: Browser;
let site: string;
let draft: string;

/** The fixture with a torque chart of several sheets. */
const longChart: Book = {
  ...fixtureBook,
  torques: Array.from({ length: 90 }, (_, i) =>
    fixtureBook.torques.map((row) => ({ ...row, anchor: `${row.anchor}-${i}` })),
  ).flat(),
};

beforeAll(async () => {
  bench = await makeBench();
  site = await bench.publish(longChart, 'clean');
  draft = await bench.publish(draftBook, 'draft');
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});

/** Text of each printed sheet, without white space. */
async function print(
  folder: string,
  path: string,
  paper: 'A4' | 'Letter' = 'A4',
): Promise<string[]> {
  const page = await browser.newPage();
  await page.goto(pathToFileURL(join(folder, path)).href);
  const pdf = await page.pdf({ format: paper });
  await page.close();
  return await pdfPages(pdf);
}

const checks = 'procedures/check-hoses/index.html';
const count = (text: string, part: string): number => text.split(part).length - 1;

describe.each(['A4', 'Letter'] as const)('printed on %s', (paper) => {
  test('every sheet has the running title, document number, revision and its number of all', async () => {
    const sheets = await print(site, 'procedures/replace-ram-seal/index.html', paper);
    expect(sheets.length).toBeGreaterThan(1);
    for (const [i, text] of sheets.entries()) {
      expect(text).toMatch(/^Replacetheramseal/);
      expect(text).toContain('LS-22-040·revision3');
      expect(text).toContain(`Page${i + 1}of${sheets.length}`);
      expect(text).toContain('edition4·April2031·FernhollowImplements');
    }
  });

  test('no step is split over two sheets, and no hazard is parted from its step', async () => {
    const sheets = await print(site, checks, paper);
    expect(sheets.length).toBeGreaterThan(2);
    expect(count(sheets.join(''), 'Checkhoseclip')).toBe(40);
    expect(count(sheets.join(''), 'WARNING')).toBe(10);
    for (const text of sheets) {
      expect(count(text, 'feelforplay.')).toBe(count(text, 'Checkhoseclip'));
      expect([...text.matchAll(/\dWARNING/g)]).toHaveLength(count(text, 'WARNING'));
      for (const [, number] of text.matchAll(/(\d+)WARNING/g))
        expect(text).toContain(`Checkhoseclip${number}forwear`);
    }
  });

  test('no heading stands alone at the foot of a sheet', async () => {
    for (const path of [
      checks,
      'procedures/replace-ram-seal/index.html',
      'procedures/make-safe/index.html',
    ]) {
      for (const text of await print(site, path, paper))
        expect(text).not.toMatch(
          /(clips|Removal|Inspection|Reassembly|Makesafe|Sign-off|Revisions)$/,
        );
    }
  });

  test('the head of a table stands on every sheet of it', async () => {
    const sheets = await print(site, 'torque-chart/index.html', paper);
    expect(sheets.length).toBeGreaterThan(2);
    for (const text of sheets)
      expect(text).toContain('FastenerorconnectionCountThreadTorqueUsedin');
  });

  test('a draft says so on every sheet, and the way through the site is left out', async () => {
    const sheets = await print(draft, checks, paper);
    for (const text of sheets) {
      expect(text).toContain('DRAFT,notforwork');
      expect(count(text, 'DRAFT')).toBe(2);
      expect(text).not.toContain('Fluidsandcapacities');
    }
    expect((await print(site, checks, paper)).join('')).not.toContain('DRAFT');
  });
});

test('on paper the boxes stay level with their step, and links are not underlined', async () => {
  const page = await browser.newPage({ viewport: { width: 703, height: 1000 } });
  await page.emulateMedia({ media: 'print' });
  await page.goto(pathToFileURL(join(site, 'procedures/replace-ram-seal/index.html')).href);
  const body = await page.locator('#step-3 > .body').boundingBox();
  const margin = await page.locator('#step-3 > .margin').boundingBox();
  if (body === null || margin === null) throw new Error('step 3 is not to be seen');
  expect(margin.x).toBeGreaterThanOrEqual(body.x + body.width);
  expect(
    await page
      .locator('.title-block a')
      .evaluate((link) => getComputedStyle(link).textDecorationLine),
  ).toBe('none');
  expect(await page.locator('.strip').isVisible()).toBe(false);
  await page.close();
});
