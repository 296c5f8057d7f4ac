import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { lstat, mkdir, readdir, readFile, symlink, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { packageFile } from '../../src/command/package-root.ts';
import { brokenManual, type Folder, makeFolder, run, soundManual } from '../command/run.ts';
import { beside, killPublishing } from './killed-publish.ts';
import { printOfFolder } from './print-of-folder.ts';

let folder: Folder;
let site: string;
beforeEach(async () => {
  folder = await makeFolder();
  site = join(folder.path, 'site');
  await write(soundManual);
});
afterEach(() => folder.remove());

const write = (files: Readonly<Record<string, string>>): Promise<void> =>
  folder.write(
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`manual/${path}`, text])),
  );
const publish = (env = {}, to = 'site') => run(['publish', 'manual', '--to', to], folder.path, env);
const preload = fileURLToPath(new URL('kill-after-rename.ts', import.meta.url));
const killed = { NODE_OPTIONS: `--import=${preload}` };

test('killed at any moment, the site is the old one or the new, and the next run clears what is left', async () => {
  // The same moments each time, as parts of the run.
  let seed = 7;
  const random = (): number => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed / 2_147_483_647;
  };
  const found = await killPublishing(folder, 6, random);
  expect(found.broken).toEqual([]);
  expect(found.old + found.fresh).toBe(6);
  expect(found.leftoversAtTheEnd).toEqual([]);
}, 180_000);

describe('killed between moving the old site away and putting the new one there', () => {
  beforeEach(async () => {
    expect((await publish()).code).toBe(0);
  });

  test('the next run brings the old site back, even one that publishes nothing', async () => {
    const before = await printOfFolder(site);
    expect((await publish(killed)).code).toBe(null);
    expect(existsSync(site)).toBe(false);
    expect(await beside(site)).toHaveLength(1);
    await write(brokenManual);
    expect((await publish()).code).toBe(1);
    expect(await printOfFolder(site)).toBe(before);
    expect(await beside(site)).toEqual([]);
  });

  test('a run that goes on elsewhere is left alone, and one of another machine for a day', async () => {
    const other = join(folder.path, '.site-in-the-making-other');
    await folder.write({
      '.site-in-the-making-mine/owner.json': JSON.stringify({
        host: (await import('node:os')).hostname(),
        pid: process.pid,
        since: 1,
      }),
      '.site-in-the-making-other/owner.json': JSON.stringify({
        host: 'elsewhere',
        pid: 1,
        since: 1,
      }),
      '.site-in-the-making-other/old/index.html': 'old',
    });
    expect((await publish()).code).toBe(0);
    expect([...(await beside(site))].sort()).toEqual([
      '.site-in-the-making-mine',
      '.site-in-the-making-other',
    ]);
    const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 3600;
    await utimes(other, twoDaysAgo, twoDaysAgo);
    expect((await publish()).code).toBe(0);
    expect(await beside(site)).toEqual(['.site-in-the-making-mine']);
    expect(await readFile(join(site, 'index.html'), 'utf8')).not.toBe('old');
  });
});

describe('where the site goes', () => {
  test('a link stays a link, and what it leads to is replaced', async () => {
    await mkdir(join(folder.path, 'www/real'), { recursive: true });
    await symlink('www/real', site);
    expect((await publish()).code).toBe(0);
    expect((await publish()).code).toBe(0);
    expect(await readdir(folder.path)).toEqual(['manual', 'site', 'www']);
    expect(existsSync(join(folder.path, 'www/real/index.html'))).toBe(true);
    expect(await readdir(join(folder.path, 'www'))).toEqual(['real']);
  });

  test('a link that leads back to itself is told', async () => {
    await symlink('site', site);
    const { code, err } = await publish();
    expect(code).toBe(2);
    expect(err).toMatch(
      /^tallybolt: The site cannot be written to .*site: it leads back to itself\.\n/,
    );
  });

  test.each(['.', 'manual'])(
    '%s, which holds the manual, is left alone though it has the mark of a site',
    async (to) => {
      await folder.write({ '.tallybolt-site': '', 'manual/.tallybolt-site': '' });
      const before = await printOfFolder(folder.path);
      const { code, err } = await publish({}, to);
      expect(code).toBe(2);
      expect(err).toMatch(/^tallybolt: The manual is in .*, and publish would delete it/);
      expect(await printOfFolder(folder.path)).toBe(before);
    },
  );
});

test('a picture that is a link goes out as the picture', async () => {
  await folder.write({
    'manual/figures/real.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>',
    'manual/procedures/oil-hinge.md': `${soundManual['procedures/oil-hinge.md']}
:::figure{src="../figures/a.svg" alt="A hinge"}
:::
`,
  });
  await symlink('real.svg', join(folder.path, 'manual/figures/a.svg'));
  expect((await publish()).code).toBe(0);
  expect((await lstat(join(site, 'figures/a.svg'))).isFile()).toBe(true);
});

test.skipIf(process.platform === 'win32')(
  'where files cannot be written to the end, the old site stays',
  async () => {
    expect((await publish()).code).toBe(0);
    const before = await printOfFolder(site);
    // As on a full disk: no file may have more than a few kilobytes.
    const command = `"${process.execPath}" "${packageFile('src/command/main.ts')}" publish manual --to site`;
    const ran = await promisify(execFile)(
      'sh',
      ['-c', `trap '' XFSZ; ulimit -f 4; ${command} 2>&1; echo "code $?"`],
      {
        cwd: folder.path,
      },
    );
    expect(ran.stdout).toMatch(
      /^tallybolt: The site cannot be written to .*site: a file would be larger than is allowed here\.\nThe old site is still there\. Put that right, then run it again\.\ncode 2\n$/,
    );
    expect(await printOfFolder(site)).toBe(before);
    expect(await beside(site)).toEqual([]);
  },
);
