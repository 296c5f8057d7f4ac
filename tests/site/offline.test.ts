/// <reference lib="dom" />
import { cp, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { writeOfflineScript } from '../../src/command/offline-copy.ts';
import { fixtureBook } from './fixture-book.ts';
import { type Bench, filesBelow, makeBench } from './published.ts';
import { type FolderServer, serveFolder } from './serve-folder.ts';

let bench: Bench;
let browser: Browser;
let context: BrowserContext;
let server: FolderServer;
let site: string;
let served: string;

const contents = 'index.html';
const sheet = 'procedures/replace-ram-seal/index.html';

beforeAll(async () => {
  bench = await makeBench();
  site = await bench.publish(fixtureBook, 'site');
  browser = await launchBrowser();
  server = await serveFolder(() => served);
});
afterAll(async () => {
  await server.close();
  await browser.close();
  await bench.clear();
});
/** A device of its own for each test. */
beforeEach(async () => {
  served = site;
  context = await browser.newContext();
});
afterEach(() => context.close());

/** Visits a page and waits until the whole site is kept. */
async function visit(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(server.address + path);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await expect
    .poll(() =>
      page.evaluate(async () => {
        const { active } = await navigator.serviceWorker.ready;
        return active?.state;
      }),
    )
    .toBe('activated');
  return page;
}

/** The same site with another word on the contents page. */
async function newerEdition(): Promise<string> {
  const newer = join(bench.folder, 'newer');
  await rm(newer, { recursive: true, force: true });
  await cp(site, newer, { recursive: true });
  const page = join(newer, contents);
  const text = await readFile(page, 'utf8');
  await writeFile(page, text.replaceAll('Replace the ram seal', 'Replace the new ram seal'));
  await writeOfflineScript(newer);
  return newer;
}

const offers = (page: Page) => page.getByText('A newer revision of this manual is here.');

describe('without a network', () => {
  test('after one visit every page opens, with style, script and figures', async () => {
    const page = await visit(contents);
    await context.setOffline(true);
    const failed: string[] = [];
    page.on('requestfailed', (request) => failed.push(request.url()));
    page.on('pageerror', (error) => failed.push(error.message));
    const pages = (await filesBelow(site)).filter((path) => path.endsWith('.html'));
    expect(pages.length).toBeGreaterThan(10);
    for (const path of pages) {
      const answer = await page.goto(server.address + path);
      expect(answer?.status(), path).toBe(200);
      expect(answer?.fromServiceWorker(), path).toBe(true);
    }
    await page.goto(server.address + sheet);
    const frame = page.locator('.title-block');
    expect(await frame.evaluate((element) => getComputedStyle(element).borderTopWidth)).toBe('3px');
    await page.getByRole('checkbox', { name: 'Step 1 done', exact: true }).check();
    await page.reload();
    expect(await page.locator('.job .count').textContent()).toContain('1 of 13 steps done');
    const figure = page.locator('.work img').first();
    await figure.scrollIntoViewIfNeeded();
    await expect
      .poll(() =>
        figure.evaluate((image) => (image instanceof HTMLImageElement ? image.naturalWidth : 0)),
      )
      .toBe(640);
    await page.goto(`${server.address}procedures/make-safe/`);
    expect(await page.title()).toContain('Make the log splitter safe');
    await page.goto(`${server.address}search/index.html?q=seal`);
    expect(await page.title()).toContain('Search');
    expect(failed).toEqual([]);
  });

  test('a device that never was here has nothing', async () => {
    const page = await context.newPage();
    await context.setOffline(true);
    await expect(page.goto(server.address)).rejects.toThrow();
  });
});

describe('a newer manual', () => {
  test('is told, and loaded when its reader asks for it and not before', async () => {
    const page = await visit(contents);
    expect(await offers(page).count()).toBe(0);
    served = await newerEdition();
    await page.reload();
    await offers(page).waitFor();
    await page.reload();
    await offers(page).waitFor();
    expect(await page.getByText('Replace the new ram seal').count()).toBe(0);
    await page.getByRole('button', { name: 'Load it' }).click();
    await page.getByText('Replace the new ram seal').first().waitFor();
    expect(await offers(page).count()).toBe(0);
    await context.setOffline(true);
    await page.reload();
    expect(await page.getByText('Replace the new ram seal').count()).toBeGreaterThan(0);
  });

  test('leaves a job in another tab alone', async () => {
    const page = await visit(contents);
    const work = await context.newPage();
    await work.goto(server.address + sheet);
    await work.getByRole('checkbox', { name: 'Step 1 done', exact: true }).check();
    await work.evaluate(() => Reflect.set(window, 'isSamePage', true));
    served = await newerEdition();
    await page.reload();
    await page.getByRole('button', { name: 'Load it' }).click();
    await page.getByText('Replace the new ram seal').first().waitFor();
    expect(await work.evaluate(() => Reflect.get(window, 'isSamePage'))).toBe(true);
    expect(await work.getByRole('checkbox', { name: 'Step 1 done', exact: true }).isChecked()).toBe(
      true,
    );
  });

  test('can wait', async () => {
    const page = await visit(contents);
    served = await newerEdition();
    await page.reload();
    await page.getByRole('button', { name: 'Later' }).click();
    expect(await offers(page).count()).toBe(0);
    expect(await page.getByText('Replace the new ram seal').count()).toBe(0);
  });

  test('one that is the same is not told', async () => {
    const page = await visit(contents);
    await page.reload();
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
    });
    expect(await offers(page).count()).toBe(0);
  });
});

test('the list of files has each file of the site once, and its mark is of the bytes', async () => {
  const script = join(site, 'offline.js');
  const text = await readFile(script, 'utf8');
  const listed = [...text.matchAll(/\{url:"([^"]+)",revision:"([0-9a-f]{16})"\}/g)].map(
    ([, url]) => url,
  );
  const files = (await filesBelow(site)).filter(
    (path) => path !== 'offline.js' && !path.startsWith('.'),
  );
  expect(listed).toEqual(files);
  await writeOfflineScript(site);
  expect(await readFile(script, 'utf8')).toBe(text);
  const newer = await newerEdition();
  expect(await readFile(join(newer, 'offline.js'), 'utf8')).not.toBe(text);
});
