/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { readPdf } from '../pdf-text.ts';
import { bookOf } from '../render/linked-manual.ts';
import { faintTexts } from './contrast.ts';
import { type Bench, makeBench } from './published.ts';
import { variantsManual } from './variants-manual.ts';

let bench: Bench;
let browser: Browser;
let context: BrowserContext;
let site: string;

beforeAll(async () => {
  bench = await makeBench();
  site = await bench.publish({ ...bookOf(variantsManual), draft: false }, 'variants');
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});
/** A device of its own for each test. */
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
});
afterEach(() => context.close());

const service = 'procedures/service/index.html';
const brakes = 'procedures/brakes/index.html';

async function open(path: string, query = ''): Promise<Page> {
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(site, path)).href + query);
  return page;
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** The steps as they are to be seen: number and words. */
async function stepsOf(page: Page): Promise<string[]> {
  const rows = await page.locator('.work li.step').filter({ visible: true }).all();
  return Promise.all(
    rows.map(async (row) => {
      const number = await row.locator('> .tick .number').textContent();
      const words = await row.locator('> .body > p').filter({ visible: true }).allInnerTexts();
      return plain(`${number} ${words.join(' ')}`);
    }),
  );
}

const seen = async (page: Page, selector: string): Promise<string[]> =>
  (await page.locator(selector).filter({ visible: true }).allInnerTexts()).map(plain);

describe('without a choice, and without a script', () => {
  test('everything stands there with the words for whom it is', async () => {
    const plainContext = await browser.newContext({ javaScriptEnabled: false });
    const page = await plainContext.newPage();
    await page.goto(pathToFileURL(join(site, service)).href);
    const steps = await stepsOf(page);
    expect(steps).toHaveLength(10);
    expect(steps[2]).toBe(
      '3 Wipe the plate, only for rope winch: remove the rope and only for brakes = overrun: look at the cable.',
    );
    expect(await seen(page, '.variants')).toEqual(['Variants all']);
    expect(await stepsOf(await open(service))).toEqual(steps);
    await plainContext.close();
  });

  test('nothing of the address or the device changes', async () => {
    const page = await open(service);
    expect(new URL(page.url()).search).toBe('');
    expect(await page.evaluate(() => localStorage.length)).toBe(0);
  });
});

describe('a choice', () => {
  test('shows the steps that apply, their numbers and all that names them closed up', async () => {
    const page = await open(service, '?winch=no');
    expect(await stepsOf(page)).toEqual([
      '1 Sweep the deck.',
      '2 Wipe the plate and only for brakes = overrun: look at the cable.',
      '3 Only for brakes = none: Feel the drum (left and right). Note what you felt.',
      '4 Only after step 1 Look at the lamps.',
      '4.1 Look at the second lamp.',
      '5',
      '6 Look at the drums (left and right).',
    ]);
    expect(await page.getByRole('checkbox', { name: 'Step 4.1 done' }).count()).toBe(1);
    expect(await page.getByRole('checkbox', { name: 'Step 6, left done' }).count()).toBe(1);
    expect((await seen(page, '.before .cell'))[0]).toContain('for step 1, 5 min');
    expect((await seen(page, '.before .cell'))[0]).toContain('6 steps');
    expect(await seen(page, '.reference')).toEqual([
      expect.stringContaining('Do Adjust the brakes (brakes), 1 step, then'),
    ]);
  });

  test('that decides all leaves no words for whom something is', async () => {
    const page = await open(service, '?winch=yes');
    expect(await seen(page, '.only, .for')).toEqual([]);
    expect((await stepsOf(page))[2]).toBe(
      '3 Wipe the plate, remove the rope and look at the cable.',
    );
    expect((await stepsOf(page))[7]).toBe('6 Install the rope. Feel the drums (left and right).');
    const none = await open(service, '?brakes=none');
    expect((await stepsOf(none)).slice(0, 4)).toEqual([
      '1 Sweep the deck.',
      '2 Wipe the plate.',
      '3 Feel the drum (left and right). Note what you felt.',
      '4 Only after step 1 Look at the lamps.',
    ]);
  });

  test('never takes a hazard away with the step that it stood in', async () => {
    const page = await open(service, '?winch=no');
    expect(await seen(page, '.work .hazard .what')).toEqual(['Something snaps.']);
    const hazard = page.locator('#step-2 .hazard');
    expect(await hazard.isVisible()).toBe(true);
    await page.getByText('Choose the machine').click();
    await page.locator('.chooser').getByLabel('rope winch').selectOption('');
    expect(await page.locator('#step-1 .hazard').isVisible()).toBe(true);
  });

  test('is made once: it stands in the address, survives a reload and goes along to other pages', async () => {
    const page = await open('index.html');
    await page.locator('.chooser').getByLabel('rope winch').selectOption('no');
    await page.locator('.chooser').getByLabel('brakes').selectOption('none');
    expect(new URL(page.url()).search).toBe('?winch=no&brakes=none');
    await page.reload();
    expect(await seen(page, '.variants dd > span')).toEqual(['rope winch: no; brakes: none']);
    expect(await seen(page, '[data-left-out]')).toEqual(['1 sheet is not for this machine.']);
    expect(await seen(page, 'tr[data-sheet] th')).toEqual(['Service the truck']);
    await page.getByRole('link', { name: 'Service the truck' }).click();
    await page.waitForURL(/service/);
    expect(await seen(page, '.variants dd > span')).toEqual(['rope winch: no; brakes: none']);
    expect(new URL(page.url()).search).toBe('?winch=no&brakes=none');
    const later = await open(service);
    expect(await seen(later, '.variants dd > span')).toEqual(['rope winch: no; brakes: none']);
    const other = await open(service, '?winch=yes');
    expect(await seen(other, '.variants dd > span')).toEqual(['rope winch: yes; brakes: overrun']);
  });

  test('cannot be one that no machine has, and fills in what follows', async () => {
    const page = await open('index.html');
    await page.locator('.chooser').getByLabel('rope winch').selectOption('yes');
    expect(await page.locator('.chooser').getByLabel('brakes').inputValue()).toBe('overrun');
    expect(await page.locator('option:disabled').allInnerTexts()).toEqual(['any', 'none']);
    const asked = await open(service, '?winch=yes&brakes=none');
    expect(await seen(asked, '.variants dd > span')).toEqual(['rope winch: yes; brakes: overrun']);
  });

  test('of a machine that a sheet is not for says so in the place of its steps', async () => {
    const page = await open(brakes, '?brakes=none');
    expect(await seen(page, '.unfit h2')).toEqual(['This sheet is not for the chosen machine.']);
    expect(await seen(page, '.step, .before, .sign-off')).toEqual([]);
    await page.getByText('Choose the machine').click();
    await page.locator('.chooser').getByLabel('brakes').selectOption('overrun');
    expect(await seen(page, '.unfit')).toEqual([]);
    expect(await seen(page, '.step')).toHaveLength(2);
  });

  test('is made with targets of 44 px, in text that stands out, on a page no wider than a phone', async () => {
    const page = await open('index.html');
    await page.setViewportSize({ width: 320, height: 800 });
    for (const target of await page.locator('.chooser summary, .chooser select').all())
      expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    expect(await faintTexts(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      320,
    );
  });
});

describe('on paper', () => {
  const print = async (path: string, query = '') =>
    (await readPdf(await (await open(path, query)).pdf({ format: 'A4' }))).pages;

  test('every page names the machine, and has no step of another', async () => {
    const pages = await print(service, '?winch=no&brakes=none');
    expect(pages.length).toBeGreaterThan(1);
    for (const { text } of pages) {
      expect(text).toContain('ropewinch:no;brakes:none');
      expect(text).not.toMatch(/Pulltherope|removetherope|lookatthecable|Adjustthebrakes/i);
      expect(text).not.toContain('Choosethemachine');
    }
  });

  test('without a choice every page says that it is for all', async () => {
    for (const { text } of await print(service)) expect(text).toContain('allvariants');
    for (const { text } of await print(brakes)) expect(text).toContain('onlyforbrakes=overrun');
  });
});
