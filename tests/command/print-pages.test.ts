import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { CannotRun } from '../../src/command/cannot-run.ts';
import { printPages } from '../../src/command/print-pages.ts';
import { readPdf } from '../pdf-text.ts';

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await launchBrowser();
  folder = await mkdtemp(join(tmpdir(), 'tallybolt-print-'));
  await writeFile(
    join(folder, 'rod.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 20" width="64" height="20"><circle cx="9" cy="10" r="8"/></svg>\n',
  );
  await writeFile(join(folder, 'seal cut.png'), 'no picture');
});
afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
});

/** Prints one page with pictures on it. */
async function printed(...pictures: readonly string[]): Promise<Uint8Array[]> {
  const file = join(folder, 'page.html');
  const images = pictures.map((name) => `<img src="${name}" alt="" loading="lazy">`).join('');
  // The picture stands far below what a screen shows.
  await writeFile(
    file,
    `<!doctype html><title>Fit the rod</title><p>Rod<div style="height:9000px"></div>${images}`,
  );
  const all: Uint8Array[] = [];
  await printPages(browser, [{ file, query: '' }], 'A4', async (_, pdf) => {
    all.push(pdf);
  });
  return all;
}

test('a page is printed with the pictures that are fetched late', async () => {
  const [pdf] = await printed('rod.svg');
  const { pages } = await readPdf(pdf ?? new Uint8Array());
  expect(pages[0]?.text).toContain('Rod');
});

test.each([
  ['one that is no picture', 'seal%20cut.png', 'seal cut.png'],
  ['one that is not there', 'hub.svg', 'hub.svg'],
])('nothing is printed with a picture that cannot be shown: %s', async (_, src, name) => {
  const error = await printed('rod.svg', src).catch((reason: unknown) => reason);
  expect(error).toBeInstanceOf(CannotRun);
  expect(String(error)).toContain(`The picture ${name} on the page “Fit the rod” cannot be shown`);
});
