import { chmod, mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesBelow } from '../site/published.ts';
import { type Folder, makeFolder, run } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
});
afterEach(() => folder.remove());

const scaffold = (...words: string[]) => run(['scaffold', ...words], folder.path);

const files = [
  'figures/drive.svg',
  'machines/pellbrook-m3-paddle-mixer.yaml',
  'manual.yaml',
  'procedures/drive/replace-drive-belt.md',
  'procedures/safety/make-safe.md',
  'procedures/safety/return-to-service.md',
  'procedures/service/change-gear-oil.md',
];

test('writes a manual that passes, and asks nothing in a pipe', async () => {
  const { code, out, err } = await scaffold('mixer');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('  tallybolt inspect mixer');
  expect(await filesBelow(join(folder.path, 'mixer'))).toEqual(files);
  expect(await run(['inspect', 'mixer'], folder.path)).toMatchObject({
    code: 0,
    out: 'Pellbrook M3 paddle mixer, workshop manual: 4 procedures, 38 steps, 32 actions checked; everything balances.\n',
  });
  expect(await readdir(folder.path)).toEqual(['mixer']);
});

test('takes what the options say, whatever their signs', async () => {
  const words = [
    '--title',
    'Mixer: "the #1"',
    '--machine',
    "Rührer 'Süd' 3",
    '--units',
    'inch-first',
  ];
  expect(await scaffold('a/b/mixer', ...words, '--prefix', '007')).toMatchObject({ code: 0 });
  const { code, out } = await run(['inspect', 'a/b/mixer'], folder.path);
  expect({ code, out }).toMatchObject({
    code: 0,
    out: expect.stringContaining('Mixer: "the #1": 4 '),
  });
  const machines = await readdir(join(folder.path, 'a/b/mixer/machines'));
  expect(machines).toEqual(['ruhrer-sud-3.yaml']);
});

test('writes into a folder that is empty, also into the one where it is called', async () => {
  await mkdir(join(folder.path, 'empty'));
  const { code, out } = await run(['scaffold', '.'], join(folder.path, 'empty'));
  expect({ code, out }).toMatchObject({
    code: 0,
    out: expect.stringContaining('  tallybolt inspect .\n'),
  });
  expect(await filesBelow(join(folder.path, 'empty'))).toEqual(files);
});

test.for([
  [
    'a folder with files',
    'used',
    'is not empty (it holds note.txt), and nothing there is overwritten',
  ],
  ['a file', 'used/note.txt', 'is a file'],
  ['a folder below a file', 'used/note.txt/mixer', 'a part of its path is a file'],
] as const)('refuses %s and leaves it as it was', async ([, place, words]) => {
  await folder.write({ 'used/note.txt': 'mine' });
  const { code, out, err } = await scaffold(place);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(words);
  expect(err).toContain('Name a new or an empty folder. Nothing was changed.');
  expect(await filesBelow(folder.path)).toEqual(['used/note.txt']);
  expect(await readFile(join(folder.path, 'used/note.txt'), 'utf8')).toBe('mine');
});

test.runIf(process.getuid?.() !== 0)('where it cannot write, nothing is left behind', async () => {
  await mkdir(join(folder.path, 'shut'));
  await chmod(join(folder.path, 'shut'), 0o555);
  const { code, err } = await scaffold('shut/deep/mixer');
  await chmod(join(folder.path, 'shut'), 0o755);
  expect({ code, err }).toMatchObject({
    code: 2,
    err: expect.stringContaining('permission denied'),
  });
  expect(await readdir(join(folder.path, 'shut'))).toEqual([]);
});

test.for([
  ['--title', ' '],
  ['--machine', '\u200E'],
  ['--units', 'furlongs'],
] as const)('refuses %s %j', async ([option, value]) => {
  const { code, err } = await scaffold('mixer', option, value);
  expect(code).toBe(2);
  expect(err).toContain(option);
  expect(await readdir(folder.path)).toEqual([]);
});

test('publishes', async () => {
  expect(await scaffold('mixer')).toMatchObject({ code: 0 });
  const { code, err } = await run(['publish', 'mixer', '--to', 'pages'], folder.path);
  expect({ code, err }).toMatchObject({ code: 0 });
  const pages = await filesBelow(join(folder.path, 'pages'));
  expect(pages).toContain('procedures/replace-drive-belt/index.html');
  const sheet = await readFile(
    join(folder.path, 'pages/procedures/replace-drive-belt/index.html'),
    'utf8',
  );
  expect(sheet).toContain('45 N·m');
  expect(sheet).toContain('(33 lbf·ft)');
}, 240_000);
