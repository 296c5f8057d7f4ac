import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readPdf } from '../pdf-text.ts';
import { brokenManual, type Folder, makeFolder, type Ran, run, soundManual } from './run.ts';

const greaseLock = `---
procedure: grease-lock
title: Grease the lock
---

1. ::perform{procedure=oil-hinge}
2. Grease the latch, see [Oil the hinge](oil-hinge.md).
`;
const twoSheets = { ...soundManual, 'procedures/grease-lock.md': greaseLock };

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
});
afterEach(() => folder.remove());

const print = (...words: string[]): Promise<Ran> =>
  run(['print', ...words, '--to', 'out'], folder.path);
const pdf = async (name: string) => readPdf(await readFile(join(folder.path, 'out', name)));

test('the whole manual: a tagged PDF with bookmarks for each sheet and chart, its links led to the others', async () => {
  await folder.write(twoSheets);
  const { code, out, err } = await print();
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('5 PDFs on A4 printed');
  expect((await readdir(join(folder.path, 'out'))).sort()).toEqual([
    'contents.pdf',
    'fluids.pdf',
    'procedures',
    'torque-chart.pdf',
  ]);
  const sheet = await pdf('procedures/grease-lock.pdf');
  expect(sheet.title).toContain('Grease the lock');
  expect(sheet.isTagged).toBe(true);
  expect(sheet.bookmarks).toContain('Before you start');
  expect(sheet.pages.at(0)?.text).toContain('Page1of');
  // ISO 216: A4 is 210 by 297 mm, at 72 points an inch.
  expect(sheet.pages[0]?.width).toBeCloseTo((210 / 25.4) * 72, -1);
  expect(sheet.pages[0]?.height).toBeCloseTo((297 / 25.4) * 72, -1);
  const files = sheet.pages.flatMap(({ links }) => links.map(({ file }) => file));
  expect(files).toContain('oil-hinge.pdf');
  const contents = await pdf('contents.pdf');
  expect(contents.pages.flatMap(({ links }) => links.map(({ file }) => file))).toEqual(
    expect.arrayContaining(['procedures/oil-hinge.pdf', 'procedures/grease-lock.pdf']),
  );
});

test('one procedure on Letter, its links led to the address of the manual', async () => {
  await folder.write({
    ...twoSheets,
    'manual.yaml': 'title: Door manual\naddress: https://doors.example/manual\n',
  });
  const { code, out } = await print('--only', 'grease-lock', '--paper', 'Letter');
  expect(code).toBe(0);
  expect(out).toContain(join('out', 'procedures', 'grease-lock.pdf'));
  expect(await readdir(join(folder.path, 'out', 'procedures'))).toEqual(['grease-lock.pdf']);
  const { pages } = await pdf('procedures/grease-lock.pdf');
  // ANSI/ASME Y14.1: size A is 8.5 by 11 inches.
  expect(pages[0]?.width).toBeCloseTo(8.5 * 72, 0);
  expect(pages[0]?.height).toBeCloseTo(11 * 72, 0);
  expect(pages.flatMap(({ links }) => links.map(({ url }) => url))).toContain(
    'https://doors.example/manual/procedures/oil-hinge/index.html',
  );
});

test('without an address, a link to a page that is not printed leads nowhere, and not to this disk', async () => {
  await folder.write(twoSheets);
  expect((await print('--only', 'grease-lock')).code).toBe(0);
  const { pages } = await pdf('procedures/grease-lock.pdf');
  const links = pages.flatMap((page) => page.links);
  expect(links.filter(({ url, file }) => url !== undefined || file !== undefined)).toEqual([]);
  const bytes = await readFile(join(folder.path, 'out/procedures/grease-lock.pdf'), 'latin1');
  expect(bytes).not.toContain('file://');
});

test('a manual with errors is not printed, or as a draft with the mark on every page', async () => {
  await folder.write(brokenManual);
  const stopped = await print();
  expect(stopped.code).toBe(1);
  expect(stopped.err).toContain('Nothing was printed');
  expect(existsSync(join(folder.path, 'out'))).toBe(false);
  expect((await print('--draft', '--only', 'oil-hinge')).code).toBe(1);
  for (const { text } of (await pdf('procedures/oil-hinge.pdf')).pages)
    expect(text).toContain('DRAFT,notforwork');
});

test('a procedure that there is not is asked about, and nothing is made', async () => {
  await folder.write(soundManual);
  const { code, err } = await print('--only', 'oil-hinges');
  expect(code).toBe(2);
  expect(err).toContain('There is no procedure oil-hinges');
  expect(err).toContain('Did you mean oil-hinge?');
  expect(existsSync(join(folder.path, 'out'))).toBe(false);
});
