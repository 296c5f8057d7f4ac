/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { bookOf } from '../render/linked-manual.ts';
import { type Bench, makeBench } from './published.ts';

const settings = 'title: Invented mill\nvariants:\n  winch: [no, yes]\n';
const guard = `---
procedure: guard
title: Take the guard off
---

## Look

1. Look at it.
   ::step{time="1 min"}

## Lift

:::caution{hazard="Sharp edge" harm="Cut hands"}
Wear gloves.
:::

1. Take the rope away.
   ::step{when="winch = yes"}
2. Lift it.

   1. Wind the rope up.
      ::step{when="winch = yes"}
   2. Put it down.
`;
const service = `---
procedure: service
title: Service
---

## Start

1. Coil the cable.
   ::step{when="winch = yes" time="1 min"}
2. ::perform{procedure=guard in-place}

## Winch

1. ::perform{procedure=guard part=lift in-place when="winch = yes"}
2. Wipe the plate.

::perform{procedure=guard in-place}
`;

let bench: Bench;
let browser: Browser;
let context: BrowserContext;
let address: string;

beforeAll(async () => {
  bench = await makeBench();
  const book = bookOf({ 'manual.yaml': settings, 'guard.md': guard, 'service.md': service });
  const site = await bench.publish({ ...book, draft: false }, 'in-place');
  address = pathToFileURL(join(site, 'procedures/service/index.html')).href;
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
});
afterEach(() => context.close());

async function open(query = ''): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address + query);
  return page;
}

/** Number and words of each step that can be seen. */
async function stepsOf(page: Page): Promise<string[]> {
  const rows = await page.locator('.work li.step').filter({ visible: true }).all();
  return Promise.all(
    rows.map(async (row) => {
      const number = await row.locator('> .tick .number').textContent();
      const words = await row.locator('> .body > :is(p, .job-head)').allInnerTexts();
      return `${number} ${words.join(' ')}`
        .replace(/\s+/g, ' ')
        .replace(/Only .*?: /, '')
        .trim();
    }),
  );
}

const job = (number: string, rope: readonly [string, string] | undefined): string[] => {
  const at = rope === undefined ? ['2', '2.1'] : ['3', '3.2'];
  return [
    `${number}.1 Look at it.`,
    ...(rope === undefined ? [] : [`${number}.2 Take the rope away.`]),
    `${number}.${at[0]} Lift it.`,
    ...(rope === undefined ? [] : [`${number}.3.1 Wind the rope up.`]),
    `${number}.${at[1]} Put it down.`,
  ];
};

test('every id stands once, and every label and link inside the page finds one', async () => {
  const page = await open();
  const found = await page.evaluate(() => {
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    const wanted = [...document.querySelectorAll('[aria-labelledby], a[href^="#"]')].flatMap(
      (element) =>
        (
          element.getAttribute('aria-labelledby') ??
          element.getAttribute('href')?.slice(1) ??
          ''
        ).split(' '),
    );
    return { ids, missing: wanted.filter((id) => id !== '' && !ids.includes(id)) };
  });
  expect(found.ids.filter((id, i) => found.ids.indexOf(id) !== i)).toEqual([]);
  expect(found.missing).toEqual([]);
  expect(found.ids).toContain('step-2.3.1');
});

test('numbers of inner steps close up with those around them', async () => {
  expect((await stepsOf(await open())).slice(0, 7)).toEqual([
    '1 Coil the cable.',
    '2 Take the guard off (guard)',
    ...job('2', ['yes', 'yes']),
  ]);
  expect(await stepsOf(await open('?winch=no'))).toEqual([
    '1 Take the guard off (guard)',
    ...job('1', undefined),
    '2 Wipe the plate.',
    '3 Take the guard off (guard)',
    ...job('3', undefined),
  ]);
});

test('a hazard before inner steps stands in the first of them that is shown', async () => {
  const page = await open('?winch=no');
  const guarded = page.locator('.work .hazard').filter({ visible: true });
  const numbers = await guarded.evaluateAll((panels) =>
    panels.map((panel) => panel.closest('li.step')?.querySelector('.number')?.textContent),
  );
  expect(numbers).toEqual(['1.2', '3.2']);
});

test('each inner step keeps its own tick', async () => {
  const page = await open();
  await page.locator('#step-5\\.1 > .tick input').check();
  await page.locator('#step-2\\.3\\.1 > .tick input').check();
  await page.reload();
  const ticked = await page
    .locator('.tick input:checked')
    .evaluateAll((boxes) => boxes.map((box) => box.closest('li.step')?.id));
  expect(ticked).toEqual(['step-2.3.1', 'step-5.1']);
  expect(await page.locator('.job').textContent()).toMatch(/0 of 5/);
});

test('inner steps have their margin beside them, on the width of the sheet', async () => {
  const page = await open();
  const [outer, inner] = await Promise.all(
    ['#step-1', '#step-2\\.1'].map((step) => page.locator(`${step} > .margin`).boundingBox()),
  );
  expect(inner?.x).toBeCloseTo(outer?.x ?? 0, 0);
});
