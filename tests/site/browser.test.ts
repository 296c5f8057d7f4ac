/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { faintTexts } from './contrast.ts';
import { draftBook } from './fixture-book.ts';
import { type Bench, filesBelow, makeBench } from './published.ts';

let bench: Bench;
let browser: Browser;
let site: string;
let pages: readonly string[];

beforeAll(async () => {
  bench = await makeBench();
  site = await bench.publish(draftBook, 'draft');
  pages = (await filesBelow(site)).filter((path) => path.endsWith('.html'));
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});

const address = (path: string): string => pathToFileURL(join(site, path)).href;
const sheet = 'procedures/replace-ram-seal/index.html';

async function open(
  path: string,
  width: number,
  colorScheme: 'light' | 'dark' = 'light',
): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
  await page.goto(address(path));
  return page;
}

describe('in a browser, from a plain folder', () => {
  test('pages load whole and without a complaint of the browser', async () => {
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => complaints.push(`${page.url()}: ${message.text()}`));
    page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`));
    page.on('requestfailed', (request) => complaints.push(`not loaded: ${request.url()}`));
    for (const path of pages) {
      await page.goto(address(path));
      const frame = await page
        .locator('.title-block')
        .evaluate((element) => getComputedStyle(element).borderTopWidth);
      expect(frame, path).toBe('3px');
    }
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('a reading is held against its limits as it is typed', async () => {
    const page = await open(sheet, 820);
    const field = page.getByLabel('rod: value read');
    const said = field.locator('xpath=following-sibling::output');
    for (const [typed, words, isInvalid] of [
      ['49.95', 'Within limits', 'false'],
      ['49.8', 'Not within limits: below 49.9 mm', 'true'],
      ['50,05', 'Not within limits: above 50 mm', 'true'],
      ['about 50', 'Write a number, such as 1.2', 'true'],
      ['', '', 'false'],
    ] as const) {
      await field.fill(typed);
      expect(await said.textContent(), typed).toBe(words);
      expect(await field.getAttribute('aria-invalid'), typed).toBe(isInvalid);
    }
    expect(await said.getAttribute('data-is')).toBe('empty');
    await page.close();
  });

  /* 320 px is the width of WCAG 2.2, 1.4.10 Reflow. */
  test.each([320, 360, 820, 1280])('no page is wider than a screen of %i px', async (width) => {
    const page = await open(sheet, width);
    for (const path of pages) {
      await page.goto(address(path));
      const needed = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(needed, path).toBeLessThanOrEqual(width);
    }
    await page.close();
  });

  test('boxes stand level with their step on a desk and a tablet, and below it on a phone', async () => {
    for (const [width, isBeside] of [
      [1280, true],
      [820, true],
      [360, false],
    ] as const) {
      const page = await open(sheet, width);
      const body = await page.locator('#step-3 > .body').boundingBox();
      const margin = await page.locator('#step-3 > .margin').boundingBox();
      if (body === null || margin === null) throw new Error('step 3 is not to be seen');
      expect(margin.x >= body.x + body.width, `${width} px`).toBe(isBeside);
      expect(margin.y >= body.y + body.height, `${width} px`).toBe(!isBeside);
      await page.close();
    }
  });

  test('ticks and page links are 44 px targets, and a tick answers to finger and keyboard', async () => {
    const page = await open(sheet, 360);
    for (const target of await page.locator('.tick, .strip a, .record').all()) {
      const box = await target.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(44);
      expect(box?.width).toBeGreaterThanOrEqual(44);
    }
    const tick = page.getByRole('checkbox', { name: 'Step 2 done' });
    await page.locator('#step-2 .number').click();
    expect(await tick.isChecked()).toBe(true);
    await tick.press('Space');
    expect(await tick.isChecked()).toBe(false);
    await page.close();
  });

  /* WCAG 2.2, 1.4.3 Contrast (Minimum): 4.5:1, and 3:1 for large text. */
  test.each(['light', 'dark'] as const)(
    'text stands out from its ground in the %s look',
    async (scheme) => {
      const page = await open(sheet, 1280, scheme);
      for (const path of pages) {
        await page.goto(address(path));
        expect(await faintTexts(page), path).toEqual([]);
      }
      await page.close();
    },
  );

  test('the focus can be seen', async () => {
    const page = await open(sheet, 1280);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    const outline = await page.evaluate(
      () => getComputedStyle(document.activeElement ?? document.body).outlineWidth,
    );
    expect(outline).toBe('3px');
    await page.close();
  });
});
