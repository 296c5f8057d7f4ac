/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { readPdf } from '../pdf-text.ts';
import { bookOf } from '../render/linked-manual.ts';
import {
  arabic,
  attack,
  chinese,
  emoji,
  hebrew,
  hostileManual,
  japanese,
  longTitle,
  longWord,
} from './hostile-manual.ts';
import { overlaps } from './overlaps.ts';
import { placesOf, stepsOnSheet } from './printed-steps.ts';
import { type Bench, filesBelow, makeBench } from './published.ts';

let bench: Bench;
let browser: Browser;
let site: string;
let pages: readonly string[];
/** Dialogs, console messages, errors and files not loaded. */
const heard: string[] = [];

beforeAll(async () => {
  bench = await makeBench();
  browser = await launchBrowser();
  site = await bench.publish({ ...bookOf(hostileManual), draft: false }, 'hostile');
  pages = (await filesBelow(site)).filter(
    (path) => path.endsWith('.html') && !/^(?:guide|rules)/.test(path),
  );
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});

const words = 'procedures/words/index.html';
const sheets = [words, 'procedures/bolts/index.html', 'procedures/long/index.html'];

async function open(path: string, width = 1280): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  page.on('dialog', (dialog) => {
    heard.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('console', (message) => heard.push(`${path}: ${message.text()}`));
  page.on('pageerror', (error) => heard.push(`${path}: ${error.message}`));
  page.on('requestfailed', (request) => heard.push(`not loaded: ${request.url()}`));
  await page.goto(pathToFileURL(join(site, path)).href);
  return page;
}

/** Boxes whose contents are wider than they are, or stick out of the paper. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const paper = document.querySelector('main')?.getBoundingClientRect() ?? new DOMRect();
    return [...document.querySelectorAll<HTMLElement>('body *')].flatMap((box) => {
      const { position, display } = getComputedStyle(box);
      const isHidden = position === 'absolute' || !box.checkVisibility();
      if (isHidden || box.closest('svg, thead') !== null || box instanceof HTMLInputElement)
        return [];
      const name = `${box.tagName.toLowerCase()}.${box.className} ${box.textContent?.trim().slice(0, 30)}`;
      const { right } = box.getBoundingClientRect();
      if (box.closest('main') !== null && right > paper.right + 0.5)
        return [`out of the paper: ${name}`];
      return display !== 'inline' && box.scrollWidth > box.clientWidth + 1 && box.clientWidth > 0
        ? [`${box.scrollWidth} in ${box.clientWidth}: ${name}`]
        : [];
    });
  });

describe.each([390, 1280])('%i px wide', (width) => {
  test('no page scrolls sideways, nothing is cut off, and nothing of the text runs', async () => {
    expect(pages.length).toBeGreaterThan(12);
    const page = await open(pages[0] ?? '', width);
    for (const path of pages) {
      await page.goto(pathToFileURL(join(site, path)).href);
      const needed = await page.evaluate(() => document.documentElement.scrollWidth);
      expect.soft(needed, path).toBeLessThanOrEqual(width);
      expect.soft(await cutOff(page), path).toEqual([]);
    }
    expect(heard).toEqual([]);
    await page.close();
  });
});

test('all of it can be read: each text stands on the sheet as it was written', async () => {
  const page = await open(words);
  const text = (await page.locator('main').allInnerTexts()).join(' ').replace(/\s+/g, ' ');
  for (const wanted of [longTitle, hebrew, arabic, chinese, japanese, emoji, longWord, attack])
    expect(text).toContain(wanted);
  expect(await page.locator('h1').textContent()).toBe(longTitle);
  expect(await page.title()).toContain(longTitle);
  expect(await page.locator('main :is(script:not([type]), img)').count()).toBe(0);
  expect(await page.locator('#step-1 .hazard').count()).toBe(5);
  const bolts = await open('procedures/bolts/index.html');
  expect(await bolts.locator('h1').textContent()).toBe(`${attack} ${chinese}`);
  const chart = await open('torque-chart/index.html');
  expect(await chart.locator('tbody tr').count()).toBe(40);
  expect(heard).toEqual([]);
  for (const one of [page, bolts, chart]) await one.close();
});

test('what reads from right to left begins on the right', async () => {
  const page = await open(words, 390);
  /** How far the last line of a text is from the left and from the right of its place. */
  const gaps = (text: string) =>
    page
      .locator('.work .step > .body > p', { hasText: text })
      .first()
      .evaluate((line) => {
        const range = document.createRange();
        range.selectNodeContents(line);
        const last = [...range.getClientRects()].at(-1) ?? new DOMRect();
        const { left, right } = line.getBoundingClientRect();
        return [Math.round(last.left - left), Math.round(right - last.right)];
      });
  for (const text of [hebrew, arabic]) {
    const [left = 0, right = 0] = await gaps(text);
    expect(right, text).toBeLessThan(2);
    expect(left, text).toBeGreaterThan(20);
  }
  expect((await gaps(japanese))[0]).toBeLessThan(2);
  await page.close();
});

describe.each(['A4', 'Letter'])('on %s', (format) => {
  test.each(sheets)('%s has nothing over one another, and steps whole', async (path) => {
    const page = await open(path);
    await page.emulateMedia({ media: 'print' });
    const { pages: printed } = await readPdf(await page.pdf({ format }));
    const drawn = printed.flatMap(({ pieces }) => pieces.map(({ text }) => text));
    const signals = await page.locator('.hazard .signal').allInnerTexts();
    for (const word of new Set(signals.map((text) => text.trim())))
      expect(drawn.filter((text) => text === word).length, `${word} whole`).toBe(
        signals.filter((text) => text.trim() === word).length,
      );
    for (const [i, { pieces, width, text }] of printed.entries()) {
      expect(text).toContain(`Page${i + 1}of${printed.length}`);
      expect.soft(overlaps(pieces), `page ${i + 1}`).toEqual([]);
      for (const piece of pieces) expect.soft(piece.right, piece.text).toBeLessThan(width);
    }
    const places = placesOf(await stepsOnSheet(page), printed, 400);
    expect([...places.values()].filter((place) => typeof place === 'string')).toEqual([]);
    await page.close();
  });
});
