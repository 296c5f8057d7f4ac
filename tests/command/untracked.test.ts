import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { untrackedSchema } from '../../schemas/untracked.ts';
import { filesBelow } from '../site/published.ts';
import { type Folder, makeFolder, run, soundManual } from './run.ts';

const file = 'procedures/oil-hinge.md';
const plain = soundManual[file]
  .replace(':remove[Push the pin out]{item=hinge-pin}', 'Push the hinge pin out')
  .replace('. :install[Push the pin in]{item=hinge-pin}', '. Push the hinge pin in')
  .replace(':loosen[Loosen the plate screws]{item=plate-screw}', 'Loosen the plate screws');

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write({ ...soundManual, [file]: plain });
});
afterEach(() => folder.remove());

const inspect = (...words: string[]) => run(['inspect', folder.path, ...words]);
const text = (): Promise<string> => readFile(join(folder.path, file), 'utf8');

test('lists the words with the directives to write, and changes nothing', async () => {
  const { code, out, err } = await inspect('--untracked');
  expect({ code, err }).toEqual({ code: 1, err: '' });
  expect(out).toBe(`${file}:11:4  Loosen the plate screws
    :loosen[Loosen the plate screws]{item=plate-screw}

${file}:12:4  Push the hinge pin out
    :remove[Push the hinge pin out]{item=hinge-pin}

${file}:13:4  Push the hinge pin in
    :install[Push the hinge pin in]{item=hinge-pin}

3 actions in words without a directive: 3 can be written with --write.
`);
  expect(await text()).toBe(plain);
});

test('--dry-run shows the change and makes none', async () => {
  const { code, out } = await inspect('--untracked', '--write', '--dry-run');
  expect(code).toBe(1);
  expect(out).toContain('+1. :loosen[Loosen the plate screws]{item=plate-screw}.');
  expect(out).toContain('3 directives would be written.');
  expect(await text()).toBe(plain);
});

test('--write writes them, so that nothing is untracked and the manual balances', async () => {
  const { code, out } = await inspect('--untracked', '--write');
  expect({ code, out }).toMatchObject({
    code: 1,
    out: expect.stringContaining('3 directives written.'),
  });
  expect(await text()).toBe(
    soundManual[file]
      .replace('[Push the pin out]', '[Push the hinge pin out]')
      .replace('[Push the pin in]', '[Push the hinge pin in]'),
  );
  expect(await filesBelow(folder.path)).toEqual(Object.keys(soundManual).sort());
  expect(await inspect('--untracked')).toMatchObject({
    code: 0,
    out: 'Every action is counted: no words act without a directive.\n',
  });
  expect(await inspect()).toMatchObject({ code: 0 });
});

test('keeps line ends and a byte order mark', async () => {
  const marked = `\uFEFF${plain.replaceAll('\n', '\r\n')}`;
  await folder.write({ [file]: marked });
  await inspect('--untracked', '--write');
  const written = await text();
  expect(written).not.toBe(marked);
  expect(written.startsWith('\uFEFF---\r\n')).toBe(true);
  expect(written.replaceAll('\r\n', '')).not.toContain('\n');
});

test('a file that is changed meanwhile is left as it is', async () => {
  const { writeCounted } = await import('../../src/command/write-counted.ts');
  const changed = `${plain}\nA new last line.\n`;
  await writeFile(join(folder.path, file), changed);
  const change = { file, before: plain, after: 'something else' };
  expect(await writeCounted(folder.path, [change])).toEqual([
    { file, why: 'it was changed since it was checked; run it again' },
  ]);
  expect(await text()).toBe(changed);
});

test('--format json is as its schema says', async () => {
  const { code, out } = await inspect('--untracked', '--format', 'json');
  expect(code).toBe(1);
  expect(untrackedSchema.parse(JSON.parse(out)).proposals).toHaveLength(3);
});

test.for([
  [['--write'], '--write and --dry-run go with --untracked'],
  [['--untracked', '--format', 'sarif'], '--untracked cannot be printed as sarif'],
  [['--untracked', '--baseline', 'known.json'], '--untracked lists words, not findings'],
] as const)('refuses %j', async ([words, why]) => {
  const { code, err } = await inspect(...words);
  expect(code).toBe(2);
  expect(err).toContain(why);
  expect(await text()).toBe(plain);
});
