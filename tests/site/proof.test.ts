/// <reference lib="dom" />
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { violations } from './axe.ts';
import { makeProofBench, type ProofBench } from './proof-bench.ts';

const path = 'procedures/cutting/replace-anvil.md';
const sheet = 'procedures/replace-anvil/';
let bench: ProofBench;
let browser: Browser;
let page: Page;
let text: string;
const complaints: string[] = [];

beforeAll(async () => {
  bench = await makeProofBench();
  browser = await launchBrowser();
  text = await bench.read(path);
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
});
afterEach(async () => {
  if ((await bench.read(path).catch(() => '')) !== text) await bench.write(path, text);
  expect(bench.faults).toEqual([]);
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});

const open = async (at: string): Promise<void> => {
  await page.goto(bench.proof.address + at);
};
const strip = () => page.locator('.proof-sum');
const shows = async (words: string): Promise<void> => {
  await page.getByText(words, { exact: false }).first().waitFor();
};
/** The demo manual with a step that speaks to a directive that there is not. */
const slipped = (): string =>
  text.replace(/^(\d+)\. :remove/m, '$1. :remuve[now]{item=x}. :remove');

describe('a page of the proof', () => {
  test('follows an edit, and shows what the check finds at its step', async () => {
    await open(sheet);
    expect(await strip().textContent()).toBe('Proof: everything balances');
    await bench.write(path, slipped().replace('title: Replace', 'title: Exchange'));
    await shows('Exchange the anvil');
    const note = page.locator('li.step .proof-note.error');
    await note.waitFor();
    const line =
      slipped()
        .split('\n')
        .findIndex((one) => one.includes(':remuve')) + 1;
    const step = note.locator('xpath=ancestor::li[contains(@class, "step")]');
    const [first = 0, last = 0] = ((await step.getAttribute('data-lines')) ?? '')
      .split('-')
      .map(Number);
    expect(first).toBeLessThanOrEqual(line);
    expect(last).toBeGreaterThanOrEqual(line);
    expect(await note.textContent()).toContain(':remuve is no directive');
    expect(await strip().textContent()).toBe('Proof: 1 error');
    await bench.write(path, text);
    await page.waitForFunction(() => document.querySelector('.proof-note') === null);
    await shows('Replace the anvil');
  });

  test('shows at the top what belongs to no step', async () => {
    await open(sheet);
    await bench.write(path, text.replace('revision:', 'revizion:'));
    await page.locator('.proof-notes .proof-note').waitFor();
    expect(await page.locator('.proof-notes').textContent()).toContain('revizion');
    expect(await page.locator('li.step .proof-note').count()).toBe(0);
  });

  test('keeps place, focus, what is unfolded and the chosen machine', async () => {
    await open(sheet);
    await page.locator('.title-block details summary').click();
    const select = page.locator('.chooser select').first();
    const value = await select.locator('option').nth(1).getAttribute('value');
    await select.selectOption(value);
    const hidden = await page.locator('[data-when][hidden]').count();
    await page.locator('#step-4 input').first().focus();
    await page.evaluate(() => scrollTo(0, 1500));
    await bench.write(path, text.replace('title: Replace', 'title: Exchange'));
    await page.locator('h1', { hasText: 'Exchange' }).waitFor();
    expect(await page.evaluate(() => scrollY)).toBe(1500);
    expect(await page.evaluate(() => document.activeElement?.closest('li')?.id)).toBe('step-4');
    expect(await page.locator('.title-block details').getAttribute('open')).not.toBeNull();
    expect(await select.inputValue()).toBe(value);
    expect(await page.locator('[data-when][hidden]').count()).toBe(hidden);
    await select.selectOption('');
    expect(await page.locator('[data-when][hidden]').count()).toBe(0);
  });

  test('a press on a place opens it in the editor', async () => {
    await open(sheet);
    await bench.write(path, slipped());
    const place = page.locator('li.step .proof-place').first();
    await place.click();
    await page.locator('.proof-said', { hasText: 'Opened in the editor' }).waitFor();
    const [file = '', line, column] = ((await place.getAttribute('data-place')) ?? '').split(':');
    expect((await bench.opened()).at(-1)).toBe(`${bench.folder}/${file} ${line} ${column}`);
    expect(
      slipped()
        .split('\n')
        [Number(line) - 1]?.slice(Number(column) - 1),
    ).toMatch(/^:remuve/);
  });

  test('the list leads from any page to the note on its sheet', async () => {
    await bench.write(path, slipped());
    await open('charts/');
    await page.locator('.proof-list summary').click();
    await page.locator('.proof-list a', { hasText: 'is no directive' }).click();
    await page.waitForURL(/replace-anvil\/index\.html#proof-1$/);
    expect(await page.locator('li.step #proof-1').isVisible()).toBe(true);
  });

  test.each([
    ['light', 1280],
    ['dark', 820],
  ] as const)('axe finds nothing, %s, %i px', async (colorScheme, width) => {
    await bench.write(path, slipped().replace('revision:', 'revizion:'));
    // axe runs from a text, which the pages forbid.
    const shown = await browser.newPage({
      colorScheme,
      viewport: { width, height: 900 },
      bypassCSP: true,
    });
    await shown.goto(bench.proof.address + sheet);
    await shown.locator('.proof-list summary').click();
    expect(await shown.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      width,
    );
    // The mark across a draft is decoration, of which WCAG 2.2, 1.4.3 asks no contrast.
    const found = (await violations(shown)).filter((one) => !one.includes('<span>DRAFT</span>'));
    expect(found).toEqual([]);
    await shown.close();
  });
});

describe('what is not as it should be', () => {
  test('a sheet that has gone says so, leads on, and is back when its file is', async () => {
    await open(sheet);
    await bench.remove(path);
    await shows('is no longer in the manual');
    expect(await page.locator('main a', { hasText: 'Contents' }).count()).toBe(1);
    await bench.write(path, text);
    await page.locator('h1', { hasText: 'Replace the anvil' }).waitFor();
  });

  test('a sheet with another id leads to it', async () => {
    await open(sheet);
    await bench.write(path, text.replace('procedure: replace-anvil', 'procedure: exchange-anvil'));
    await shows('is now called');
    await page.locator('main a', { hasText: 'Replace the anvil' }).click();
    await page.waitForURL(/procedures\/exchange-anvil\/index\.html$/);
    expect(await page.locator('li.step').count()).toBeGreaterThan(5);
  });

  test.each([
    ['front matter half typed', () => text.slice(0, 25)],
    ['an empty file', () => ''],
    ['bytes that are no text', () => new Uint8Array([0, 159, 146, 150, 255, 0, 13])],
  ])('%s: the sheet stays, with the reason', async (_name, content) => {
    await open(sheet);
    const steps = await page.locator('li.step').count();
    await bench.write(path, content());
    await page.locator('.proof-held', { hasText: 'cannot be read as a procedure now' }).waitFor();
    expect(await page.locator('li.step').count()).toBe(steps);
    expect(await page.locator('.proof-notes .proof-note').count()).toBeGreaterThan(0);
    await bench.write(path, text);
    await page.locator('.proof-held').waitFor({ state: 'detached' });
  });

  test('without manual.yaml all pages stay, and follow again when it is back', async () => {
    const manual = await bench.read('manual.yaml');
    await open(sheet);
    await bench.remove('manual.yaml');
    await page.locator('.proof-held', { hasText: 'There is no manual.yaml' }).waitFor();
    expect(await page.locator('li.step').count()).toBeGreaterThan(5);
    await bench.write('manual.yaml', manual);
    await page.locator('.proof-held').waitFor({ state: 'detached' });
  });

  test('what a writer types never becomes a script', async () => {
    await open(sheet);
    const hostile = `<img src=x onerror="document.title='got in'"><script>document.title='got in'</script>`;
    await bench.write(
      path,
      text
        .replace(/^title: .*$/m, `title: ${JSON.stringify(hostile)}`)
        .replace('1. ', `1. ${hostile} `),
    );
    await page.locator('h1', { hasText: 'onerror' }).waitFor();
    expect(await page.title()).not.toBe('got in');
    expect(await page.locator('img[onerror], main script:not([type])').count()).toBe(0);
  });

  test('the browser has complained of nothing but of sheets that were not there', () => {
    expect(complaints.filter((one) => !one.includes('404'))).toEqual([]);
  });
});
