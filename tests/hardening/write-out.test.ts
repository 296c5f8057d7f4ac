import { execFile } from 'node:child_process';
import { chmod, lstat, mkdir, readFile, readlink, stat, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { reportSchema } from '../../schemas/report.ts';
import { packageFile } from '../../src/command/package-root.ts';
import { brokenManual, type Folder, makeFolder, run } from '../command/run.ts';
import { printOfFolder } from './print-of-folder.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(
    Object.fromEntries(
      Object.entries(brokenManual).map(([path, text]) => [`manual/${path}`, text]),
    ),
  );
});
afterEach(() => folder.remove());

const page = 'manual/procedures/oil-hinge.md';
const inspect = (...words: string[]) => run(['inspect', 'manual', ...words], folder.path);

describe('a report is never written over the manual', () => {
  const picture = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>';
  test.each([
    ['a text', page, 'text'],
    ['a text by a way round', 'manual/procedures/../procedures/./oil-hinge.md', 'text'],
    ['a text by a link', 'link.md', 'text'],
    ['a text by a folder that is a link', 'way/procedures/oil-hinge.md', 'text'],
    ['a text that cannot be read', 'manual/procedures/broken.md', 'text'],
    ['a picture', 'manual/figures/a.svg', 'picture'],
  ])('%s', async (_, path, what) => {
    await folder.write({
      'manual/procedures/broken.md': new Uint8Array([0xff, 0xfe, 0xff]),
      'manual/figures/a.svg': picture,
    });
    await symlink(page, join(folder.path, 'link.md'));
    await symlink('manual', join(folder.path, 'way'));
    const before = await printOfFolder(folder.path);
    for (const words of [
      ['--report', `json=${path}`],
      ['--write-baseline', path],
    ]) {
      const { code, err } = await inspect(...words);
      expect(code).toBe(2);
      expect(err).toMatch(/^tallybolt: /);
      if (words[0] === '--report') expect(err).toContain(`${path} is a ${what} of the manual.`);
      expect(await printOfFolder(folder.path)).toBe(before);
    }
  });
});

test.skipIf(process.platform === 'win32')(
  'a report goes into a pipe, and the pipe stays one',
  async () => {
    const command = `"${process.execPath}" "${packageFile('src/command/main.ts')}" inspect manual`;
    const { stdout } = await promisify(execFile)(
      'sh',
      [
        '-c',
        `mkfifo pipe && cat pipe & sleep 1; ${command} --report json=pipe --format text >/dev/null; wait`,
      ],
      { cwd: folder.path },
    );
    expect(reportSchema.parse(JSON.parse(stdout)).findings).not.toEqual([]);
    expect((await lstat(join(folder.path, 'pipe'))).isFIFO()).toBe(true);
  },
);

test('where a report cannot go is told in words, with 2', async () => {
  await mkdir(join(folder.path, 'reports'));
  for (const [path, reason] of [
    ['reports', 'it is a folder'],
    ['none/report.json', 'there is no such folder'],
    [`${'x'.repeat(300)}.json`, 'its name is too long'],
  ] as const) {
    const { code, err } = await inspect('--report', `json=${path}`);
    expect(code).toBe(2);
    expect(err.startsWith(`tallybolt: ${path} cannot be written: ${reason}.\n`), err).toBe(true);
  }
});

test('`complete` keeps the mode of a file and leaves a link a link', async () => {
  await mkdir(join(folder.path, 'manual/texts'));
  const text = await readFile(join(folder.path, page), 'utf8');
  await folder.write({ 'manual/texts/other.md': text.replace(': oil-hinge', ': other') });
  const link = join(folder.path, 'manual/procedures/other.md');
  await symlink('../texts/other.md', link);
  await chmod(join(folder.path, 'manual/texts/other.md'), 0o640);
  const { code } = await run(['complete', 'other', '--in', 'manual'], folder.path);
  expect(code).toBe(1);
  expect(await readlink(link)).toBe('../texts/other.md');
  const target = join(folder.path, 'manual/texts/other.md');
  expect((await stat(target)).mode & 0o777).toBe(0o640);
  expect(await readFile(target, 'utf8')).toContain(':install');
  expect((await run(['complete', 'other', '--in', 'manual'], folder.path)).code).toBe(0);
});
