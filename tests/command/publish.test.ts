import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { filesBelow } from '../site/published.ts';
import { brokenManual, type Folder, makeFolder, type Ran, run, soundManual } from './run.ts';

let folder: Folder;
let manual: string;
let site: string;
beforeEach(async () => {
  folder = await makeFolder();
  manual = join(folder.path, 'manual');
  site = join(folder.path, 'site');
});
afterEach(() => folder.remove());

const write = (files: Readonly<Record<string, string>>): Promise<void> =>
  folder.write(
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`manual/${path}`, text])),
  );
const publish = (...words: string[]): Promise<Ran> =>
  run(['publish', manual, '--to', site, ...words], folder.path);
const bytesBelow = async (path: string): Promise<ReadonlyMap<string, string>> =>
  new Map(
    await Promise.all(
      (await filesBelow(path)).map(
        async (file) => [file, await readFile(join(path, file), 'latin1')] as const,
      ),
    ),
  );

describe('a sound manual', () => {
  test('is published with 0, twice with the same bytes', async () => {
    await write(soundManual);
    const { code, out, err } = await publish();
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(`1 sheet`);
    expect(out).toContain(join(site, 'index.html'));
    const first = await bytesBelow(site);
    expect([...first.values()].filter((text) => text.includes('Push the pin in'))).not.toEqual([]);
    // The guide tells of the word.
    const marked = [...first].filter(([file, text]) => !isGuide(file) && text.includes('DRAFT'));
    expect(marked.map(([file]) => file)).toEqual([]);
    expect((await publish()).code).toBe(0);
    expect(await bytesBelow(site)).toEqual(first);
  });

  test('published into its own folder does not publish its older self', async () => {
    await write(soundManual);
    expect((await run(['publish'], manual)).code).toBe(0);
    const first = await bytesBelow(join(manual, 'published'));
    expect((await run(['publish'], manual)).code).toBe(0);
    expect(await bytesBelow(join(manual, 'published'))).toEqual(first);
    expect((await run(['inspect'], manual)).code).toBe(0);
  });
});

describe('a manual with errors', () => {
  test('is not published: 1, and no folder is made', async () => {
    await write(brokenManual);
    const { code, out, err } = await publish();
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('left-out');
    expect(err).toMatch(/Nothing was published: the errors above come first\..*\n$/);
    expect(await readdir(folder.path)).toEqual(['manual']);
  });

  test('leaves the last good site as it is, byte for byte', async () => {
    await write(soundManual);
    expect((await publish()).code).toBe(0);
    const before = await bytesBelow(site);
    await write(brokenManual);
    expect((await publish()).code).toBe(1);
    expect(await bytesBelow(site)).toEqual(before);
    expect((await readdir(folder.path)).sort()).toEqual(['manual', 'site']);
  });

  test('is published with --draft, with 1 and DRAFT on every sheet', async () => {
    const second = brokenManual['procedures/oil-hinge.md'].replace(': oil-hinge', ': second');
    await write({ ...brokenManual, 'procedures/second.md': second });
    const { code, out } = await publish('--draft');
    expect(code).toBe(1);
    expect(out).toContain('2 sheets, marked DRAFT, published');
    const sheets = [...(await bytesBelow(site))].filter(([, text]) =>
      text.includes('Push the pin out'),
    );
    expect(sheets.length).toBeGreaterThanOrEqual(2);
    for (const [file, text] of sheets)
      expect(text, file).toContain(file.endsWith('.json') ? '"draft": true' : 'DRAFT');
  });
});

describe('where the site cannot go ends with 2, and nothing is touched', () => {
  test('a folder with files of somebody else', async () => {
    await write(soundManual);
    await folder.write({ 'site/photo.txt': 'mine' });
    const { code, out, err } = await publish();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(
      /^tallybolt: .*site holds files that are not a published site \(such as photo\.txt\)/,
    );
    expect(await bytesBelow(site)).toEqual(new Map([['photo.txt', 'mine']]));
  });

  test('a file', async () => {
    await write(soundManual);
    await writeFile(site, 'mine');
    const { code, err } = await publish();
    expect(code).toBe(2);
    expect(err).toMatch(/^tallybolt: .*site is a file, and the site needs a folder\.\n/);
    expect(await readFile(site, 'utf8')).toBe('mine');
  });

  test('the folder of the manual itself', async () => {
    await write(soundManual);
    const { code } = await run(['publish', manual, '--to', manual], folder.path);
    expect(code).toBe(2);
    expect(await filesBelow(manual)).toEqual(Object.keys(soundManual).sort());
  });

  test('an empty folder is good', async () => {
    await write(soundManual);
    await mkdir(site);
    expect((await publish()).code).toBe(0);
    expect(existsSync(join(site, 'index.html'))).toBe(true);
  });
});

test('a manual without a procedure that can be read is not published', async () => {
  await write({ 'manual.yaml': 'title: T\n' });
  const { code, err } = await publish('--draft');
  expect(code).toBe(2);
  expect(err).toMatch(/^tallybolt: The manual in .* has no procedure that can be read\.\n/);
  expect(existsSync(site)).toBe(false);
});

const isGuide = (file: string): boolean => /^(?:guide\/|search|offline)/.test(file);
