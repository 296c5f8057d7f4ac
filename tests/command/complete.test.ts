import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesBelow } from '../site/published.ts';
import { brokenManual, type Folder, makeFolder, run, soundManual } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
});
afterEach(() => folder.remove());

const file = 'procedures/oil-hinge.md';
const complete = (...words: string[]) => run(['complete', ...words, '--in', folder.path]);
const text = (): Promise<string> => readFile(join(folder.path, file), 'utf8');

test('--dry-run shows the steps that are missing, ends with 1 and changes nothing', async () => {
  await folder.write(brokenManual);
  const { code, out, err } = await complete('oil-hinge', '--dry-run');
  expect({ code, err }).toEqual({ code: 1, err: '' });
  expect(out).toMatch(/^\+.*:install.*item=hinge-pin/m);
  expect(out).toMatch(/^\+.*:torque.*item=plate-screw/m);
  expect(out).not.toMatch(/^-(?!--)/m);
  expect(await text()).toBe(brokenManual[file]);
});

test('writes them, so that nothing is missing', async () => {
  await folder.write(brokenManual);
  expect((await complete('oil-hinge')).code).toBe(1);
  const written = await text();
  expect(written).not.toBe(brokenManual[file]);
  expect(written.startsWith(brokenManual[file].trimEnd())).toBe(true);
  expect(await run(['inspect', folder.path])).toMatchObject({ code: 0 });
  expect(await complete('oil-hinge')).toMatchObject({ code: 0, err: '' });
  expect(await text()).toBe(written);
  expect(await filesBelow(folder.path)).toEqual(Object.keys(brokenManual).sort());
});

test('leaves a sound procedure as it is', async () => {
  await folder.write(soundManual);
  const { code, out } = await complete('oil-hinge');
  expect({ code, out }).toEqual({
    code: 0,
    out: 'Oil the hinge: no step is missing to bring everything home.\n',
  });
  expect(await text()).toBe(soundManual[file]);
});

test('keeps the line ends of the file', async () => {
  await folder.write({ ...brokenManual, [file]: brokenManual[file].replaceAll('\n', '\r\n') });
  await complete('oil-hinge');
  expect((await text()).replaceAll('\r\n', '')).not.toContain('\n');
});

test('keeps a byte order mark, and writes only the missing steps', async () => {
  const marked = `\uFEFF${brokenManual[file]}`;
  await folder.write({ ...brokenManual, [file]: marked });
  expect((await complete('oil-hinge')).code).toBe(1);
  const bytes = await readFile(join(folder.path, file));
  expect([...bytes.subarray(0, 6)]).toEqual([0xef, 0xbb, 0xbf, ...Buffer.from('---')]);
  const written = bytes.toString('utf8');
  expect(written.startsWith(marked.trimEnd())).toBe(true);
  await folder.write(brokenManual);
  await complete('oil-hinge');
  expect(written).toBe(`\uFEFF${await text()}`);
});

test('refuses a procedure that there is not', async () => {
  await folder.write(soundManual);
  const { code, out, err } = await complete('oil-hing');
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(
    /^tallybolt: There is no procedure oil-hing in .*\.\nDid you mean oil-hinge\?\n$/,
  );
});
