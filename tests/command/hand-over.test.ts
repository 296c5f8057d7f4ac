import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseXml } from '@rgrove/parse-xml';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesBelow, textsBelow } from '../site/published.ts';
import { brokenManual, type Folder, makeFolder, type Ran, run, soundManual } from './run.ts';

let folder: Folder;
let out: string;
beforeEach(async () => {
  folder = await makeFolder();
  out = join(folder.path, 'out');
});
afterEach(() => folder.remove());

const write = (files: Readonly<Record<string, string>>): Promise<void> =>
  folder.write(
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`manual/${path}`, text])),
  );
const handOver = (...words: string[]): Promise<Ran> =>
  run(['hand-over', join(folder.path, 'manual'), '--into', out, ...words], folder.path);

const picture = '<svg xmlns="http://www.w3.org/2000/svg" width="4" height="3"/>\n';
const [page = ''] = Object.keys(soundManual).filter((path) => path.endsWith('.md'));

test('a sound manual is handed over with 0, with its pictures, twice with the same bytes', async () => {
  const figure = '\n   :::figure{src="../figures/a b.svg" alt="The hinge"}\n   :::\n';
  const texts = new Map(Object.entries(soundManual));
  await write({
    ...soundManual,
    [page]: `${texts.get(page)}${figure}`,
    'figures/a b.svg': picture,
  });
  const { code, out: said, err } = await handOver('--to', 'dita');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(said).toContain(join(out, 'manual.ditamap'));
  expect(await filesBelow(out)).toEqual([
    '.tallybolt-dita',
    'figures/a b.svg',
    'manual.ditamap',
    'procedures/oil-hinge.dita',
    'safety.dita',
    'torque-chart.dita',
  ]);
  const first = await textsBelow(out);
  expect(first.get('figures/a b.svg')).toBe(picture);
  expect(first.get('procedures/oil-hinge.dita')).toContain('href="../figures/a%20b.svg"');
  for (const [path, text] of first)
    if (/\.dita(map)?$/.test(path)) expect(() => parseXml(text), path).not.toThrow();
  expect((await handOver()).code).toBe(0);
  expect(await textsBelow(out)).toEqual(first);
});

test('what was handed over inside the manual is no part of it', async () => {
  await write(soundManual);
  const manual = join(folder.path, 'manual');
  expect((await run(['hand-over'], manual)).code).toBe(0);
  const first = await textsBelow(join(manual, 'handed-over'));
  expect((await run(['hand-over'], manual)).code).toBe(0);
  expect(await textsBelow(join(manual, 'handed-over'))).toEqual(first);
});

test('a manual with errors is not handed over, unless as a draft that says so', async () => {
  await write(brokenManual);
  const { code, err } = await handOver();
  expect(code).toBe(1);
  expect(err).toContain('Nothing was handed over');
  expect(existsSync(out)).toBe(false);
  expect((await handOver('--draft')).code).toBe(1);
  expect(await readFile(join(out, 'manual.ditamap'), 'utf8')).toContain(
    '<title>DRAFT, not for work: ',
  );
});

test('a folder with other files is refused, and left as it was', async () => {
  await write(soundManual);
  await folder.write({ 'out/mine.txt': 'mine' });
  const { code, err } = await handOver();
  expect(code).toBe(2);
  expect(err).toContain('mine.txt');
  expect(err).toContain('--into');
  expect(await filesBelow(out)).toEqual(['mine.txt']);
});

test('a published site is refused as well: it is something else', async () => {
  await write(soundManual);
  await folder.write({ 'out/.tallybolt-site': '', 'out/index.html': '' });
  expect((await handOver()).code).toBe(2);
});
