/// <reference lib="dom" />
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { publishCommand } from '../../src/command/publish.ts';

const files = {
  'manual.yaml': 'title: Small\n',
  'machines/press.yaml': `machine: press
name: Press
fasteners:
  ram-bolt: { name: ram bolt, count: 4, figure: ../figures/ram.svg }
parts:
  ram: { name: ram }
  rod: { name: rod }
`,
  'figures/ram.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 320 200"><rect width="320" height="200" fill="#0f0"/></svg>',
  'procedures/look.md': `---
procedure: look
title: Look
machine: press
---

1. :check[Look at the ram bolts]{item=ram-bolt}. :check{item=ram}. :check{item=rod}.

   1. Look closely.

      :::figure{src="../figures/ram.svg" alt="The ram"}
      ::callout{item=ram-bolt at="25,20 75,20"}
      ::callout{item=ram at="50,50"}
      ::callout{item=rod at="52,52"}
      ::callout[gap]{at="50,90"}
      :::
`,
};

let folder: string;
let browser: Browser;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tallybolt-callouts-'));
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, 'manual', path)), { recursive: true });
    await writeFile(join(folder, 'manual', path), text);
  }
  await publishCommand(join(folder, 'manual'), { to: join(folder, 'site'), draft: false });
  browser = await launchBrowser();
}, 60_000);
afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true });
});

async function sheetAt(width: number): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 800 } });
  await page.goto(pathToFileURL(join(folder, 'site/procedures/look/index.html')).href);
  return page;
}

test('a number of a figure leads to its item, a number in a step to the key', async () => {
  const page = await sheetAt(900);
  await page.getByRole('link', { name: 'number 2 in the figure' }).click();
  expect(page.url()).toMatch(/#figure-1-2$/);
  expect(await page.locator('li:target').textContent()).toMatch(/^2 ram$/);
  await page.getByRole('link', { name: '4, gap' }).click();
  expect(page.url()).toMatch(/#figure-1-4$/);
  await page.getByRole('link', { name: '1, ram bolt' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForURL(/machines\/press\/index\.html#ram-bolt$/);
  const picture = page.getByRole('img', { name: 'ram bolt' });
  expect(await picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
  await page.close();
});

test('the picture is there, and its numbers can be touched on a phone', async () => {
  for (const width of [320, 820, 1400]) {
    const page = await sheetAt(width);
    const touches = await page
      .locator('.touch')
      .evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect()).map(({ x, y, width }) => ({ x, y, width })),
      );
    expect(touches).toHaveLength(4);
    for (const [i, a] of touches.entries()) {
      // WCAG 2.2, 2.5.8 Target Size (Minimum): 24 by 24 CSS pixels.
      expect(a.width).toBeGreaterThanOrEqual(24);
      for (const b of touches.slice(i + 1))
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(24);
    }
    const body = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ]);
    expect(body[0]).toBe(body[1]);
    // WCAG 2.2 in dark and high contrast: the drawing keeps its white ground and the numbers their black.
    await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
    const fill = (selector: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((one) => getComputedStyle(one).fill);
    expect(await fill('.called-out text')).toBe('rgb(0, 0, 0)');
    expect(await fill('.called-out .ring')).toBe('rgb(255, 255, 255)');
    await page.close();
  }
});

test('on paper the numbers can be read, and the figure is no higher than 120 mm', async () => {
  // A4 less margins of 15 mm, and in a step of a step, where the text is narrowest.
  const page = await sheetAt(Math.round((180 / 25.4) * 96));
  await page.emulateMedia({ media: 'print' });
  const [height, font] = await page
    .locator('svg.called-out')
    .evaluate((svg: SVGSVGElement) => [
      svg.getBoundingClientRect().height,
      20 * (svg.getScreenCTM()?.a ?? 0),
    ]);
  expect(height).toBeLessThan((120 / 25.4) * 96);
  expect(font).toBeGreaterThan((7 / 72) * 96);
  const figure = page.locator('figure.with-key');
  expect(await figure.evaluate((one) => getComputedStyle(one).breakInside)).toBe('avoid');
  await page.close();
});
