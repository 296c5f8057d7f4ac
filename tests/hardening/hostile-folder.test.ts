/// <reference lib="dom" />
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { type Folder, makeFolder, run } from '../command/run.ts';
import { filesBelow } from '../site/published.ts';
import { serveFolder } from '../site/serve-folder.ts';
import { attack, hostileFolder, oddNames, unsafePictures } from './hostile-folder.ts';

let folder: Folder;
let site: string;
beforeAll(async () => {
  folder = await makeFolder();
  await folder.write(
    Object.fromEntries(
      Object.entries(hostileFolder).map(([path, text]) => [`manual/${path}`, text]),
    ),
  );
  site = join(folder.path, 'site');
  const { code, err } = await run(['publish', 'manual', '--to', 'site', '--draft'], folder.path);
  expect(code, err).toBe(1);
});
afterAll(() => folder.remove());

test('opened from a server, no page runs, loads or links to what the manual tries to', async () => {
  const server = await serveFolder(() => site);
  const browser = await launchBrowser();
  const heard: string[] = [];
  try {
    const page = await browser.newPage();
    page.on('dialog', (dialog) => {
      heard.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('console', (message) => heard.push(`console: ${message.text()}`));
    page.on('pageerror', (error) => heard.push(`error: ${error.message}`));
    page.on('request', (request) => {
      if (!/^(data:|blob:)/.test(request.url()) && !request.url().startsWith(server.address))
        heard.push(`asked for ${request.url()}`);
    });
    page.on('response', (response) => {
      if (response.status() >= 400) heard.push(`${response.status()} ${response.url()}`);
    });
    const pages = (await filesBelow(site)).filter(
      (path) => path.endsWith('.html') && !/^(guide|rules)\//.test(path),
    );
    expect(pages).toContain('procedures/a/index.html');
    for (const path of pages) {
      await page.goto(server.address + path);
      const links = await page.evaluate(() =>
        [...document.querySelectorAll('[href], [src]')].map(
          (one) => one.getAttribute('href') ?? one.getAttribute('src') ?? '',
        ),
      );
      expect(
        links.filter((link) => /^\s*(javascript|vbscript|data(?!:,$)|file):/i.test(link)),
      ).toEqual([]);
      expect(links.filter((link) => link.includes('evil.example'))).toEqual([]);
      const islands = await page.evaluate(() =>
        [...document.querySelectorAll('script[type]')].map((one) => one.textContent ?? ''),
      );
      for (const island of islands) expect(() => JSON.parse(island)).not.toThrow();
      const own = await page.evaluate(
        () => document.querySelectorAll('[onerror], [onload], img[src="x"]').length,
      );
      expect(own).toBe(0);
    }
    await page.goto(`${server.address}procedures/a/index.html`);
    expect(await page.title()).toContain(attack);
    expect(heard).toEqual([]);
  } finally {
    await browser.close();
    await server.close();
  }
});

test('pictures that could run or load something stay out, odd names are shown', async () => {
  const files = await filesBelow(site);
  const copied = files
    .filter((path) => /\.(svg|png)$/.test(path))
    .map((path) => path.replace(/^.*\//, ''));
  expect(copied.filter((name) => unsafePictures.includes(name))).toEqual([]);
  for (const name of oddNames.filter((one) => !/[\\"]/.test(one))) expect(copied).toContain(name);
  expect((await readdir(folder.path)).sort()).toEqual(['manual', 'site']);
});

test('a table for spreadsheets begins no formula, and no file closes its frame', async () => {
  for (const path of await filesBelow(site)) {
    const text = await readFile(join(site, path), 'utf8');
    if (path.endsWith('.csv')) expect(text).not.toMatch(/(^|[,\n]"?)[=+@]/);
    if (path.endsWith('.json')) expect(() => JSON.parse(text)).not.toThrow();
    if (path === 'sitemap.xml') expect(text).not.toContain('<script');
  }
});

test('reports and the export show the words and nothing else', async () => {
  for (const format of ['text', 'markdown', 'junit', 'sarif', 'json']) {
    const { out, err } = await run(['inspect', 'manual', '--format', format], folder.path);
    expect(err).toBe('');
    expect(out, format).not.toMatch(/[^\P{Cc}\n]/u);
    if (format === 'junit') expect(out).not.toContain('<script');
    if (format === 'sarif' || format === 'json') expect(() => JSON.parse(out)).not.toThrow();
  }
  expect(
    (await run(['hand-over', 'manual', '--into', 'export', '--draft'], folder.path)).code,
  ).toBe(1);
  for (const path of await filesBelow(join(folder.path, 'export'))) {
    if (!/\.(dita|ditamap|xml)$/.test(path)) continue;
    expect(await readFile(join(folder.path, 'export', path), 'utf8')).not.toMatch(
      /<(script|img)\b/,
    );
  }
});
