import { execFile } from 'node:child_process';
import { lstat, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { packageRoot } from '../../src/command/package-root.ts';
import { siteFolder, swapFolders } from '../../src/command/publish-folder.ts';
import { publishSite } from '../../src/command/publish-site.ts';
import type { Book } from '../../src/render/book.ts';
import { draftBook, fixtureBook } from './fixture-book.ts';
import { type Bench, makeBench, textsBelow } from './published.ts';

let bench: Bench;
beforeEach(async () => {
  bench = await makeBench();
});
afterEach(() => bench.clear());

/** A book whose second sheet has the address of the contents page: it cannot be built. */
const broken: Book = {
  ...fixtureBook,
  sheets: fixtureBook.sheets.map((sheet, i) =>
    i === 1 ? { ...sheet, href: 'index.html' } : sheet,
  ),
};

describe('publishing to a folder', () => {
  test('replaces an older site as a whole and leaves nothing beside it', async () => {
    const site = await bench.publish(fixtureBook, 'out');
    await writeFile(join(site, 'left-over.html'), 'from an older edition');
    await bench.publish(draftBook, 'out');
    expect([...(await textsBelow(site)).keys()]).not.toContain('left-over.html');
    expect(await readFile(join(site, 'index.html'), 'utf8')).toContain('DRAFT');
    expect((await readdir(bench.folder)).sort()).toEqual(['out', 'rod.svg']);
  });

  test('makes the folders above the site', async () => {
    await bench.publish(fixtureBook, 'new/deep/out');
    expect(await readdir(join(bench.folder, 'new/deep'))).toEqual(['out']);
  });

  test('leaves the last good site as it was when a figure cannot be copied', async () => {
    const site = await bench.publish(fixtureBook, 'out');
    const before = await textsBelow(site);
    const gone = [{ path: 'figures/gone.svg', absolute: join(bench.folder, 'gone.svg') }];
    await expect(publishSite(draftBook, gone, site)).rejects.toThrow(
      'The file figures/gone.svg cannot be copied to the site: it is gone.',
    );
    expect(await textsBelow(site)).toEqual(before);
    expect((await readdir(bench.folder)).sort()).toEqual(['out', 'rod.svg']);
  });

  test('leaves the last good site as it was when the build fails, and builds again after', async () => {
    const site = await bench.publish(fixtureBook, 'out');
    const before = await textsBelow(site);
    await expect(bench.publish(broken, 'out')).rejects.toThrow();
    expect(await textsBelow(site)).toEqual(before);
    expect((await readdir(bench.folder)).sort()).toEqual(['out', 'rod.svg']);
    await bench.publish(fixtureBook, 'out');
    expect(await textsBelow(site)).toEqual(before);
  });

  test('takes the old site back when the new one cannot be put in place', async () => {
    const target = join(bench.folder, 'out');
    await mkdir(target);
    await writeFile(join(target, 'index.html'), 'old');
    await expect(
      swapFolders(join(bench.folder, 'missing'), target, join(bench.folder, 'old'), siteFolder),
    ).rejects.toThrow(`The new site cannot be put in the place of ${target}: it is gone.`);
    expect(await readFile(join(target, 'index.html'), 'utf8')).toBe('old');
  });

  test('refuses a folder that holds something else, and touches nothing in it', async () => {
    const folder = join(bench.folder, 'manual');
    await mkdir(folder);
    await writeFile(join(folder, 'manual.yaml'), 'title: Mine\n');
    await expect(bench.publish(fixtureBook, 'manual')).rejects.toThrow(
      /holds files that are not a published site \(such as manual\.yaml\)/,
    );
    expect(await readdir(folder)).toEqual(['manual.yaml']);
    await expect(bench.publish(fixtureBook, 'rod.svg')).rejects.toThrow(
      /is a file, and the site needs a folder/,
    );
  });

  test('refuses a figure whose path leads out of the site', async () => {
    const outside = [{ path: '../rod.svg', absolute: join(bench.folder, 'rod.svg') }];
    await expect(publishSite(fixtureBook, outside, join(bench.folder, 'out'))).rejects.toThrow(
      'leads out of the site',
    );
  });

  test('writes two sites at a time without mixing them', async () => {
    const [clean, draft] = await Promise.all([
      bench.publish(fixtureBook, 'clean'),
      bench.publish(draftBook, 'draft'),
    ]);
    expect(await readFile(join(clean, 'index.html'), 'utf8')).not.toContain('DRAFT');
    expect(await readFile(join(draft, 'index.html'), 'utf8')).toContain('DRAFT');
  });

  test('writes nothing into the package, and nothing but the site where it is started', async () => {
    const before = await lstat(join(packageRoot, '.astro')).catch(() => undefined);
    const elsewhere = await mkdtemp(join(tmpdir(), 'tallybolt-cwd-'));
    const command = [join(packageRoot, 'src/command/main.ts'), 'publish', 'manual', '--to', 'out'];
    await mkdir(join(elsewhere, 'manual/procedures'), { recursive: true });
    await writeFile(join(elsewhere, 'manual/manual.yaml'), 'title: Small\n');
    await writeFile(
      join(elsewhere, 'manual/procedures/look.md'),
      '---\nprocedure: look\ntitle: Look\n---\n\n1. Look at the lamp.\n',
    );
    await promisify(execFile)(process.execPath, command, { cwd: elsewhere });
    expect((await readdir(elsewhere)).sort()).toEqual(['manual', 'out']);
    expect(await readFile(join(elsewhere, 'out/procedures/look/index.html'), 'utf8')).toContain(
      'Look at the lamp.',
    );
    const after = await lstat(join(packageRoot, '.astro')).catch(() => undefined);
    expect(after?.mtimeMs).toBe(before?.mtimeMs);
    await rm(elsewhere, { recursive: true });
  });

  test('gives the environment back as it was', async () => {
    const before = { ...process.env };
    await bench.publish(fixtureBook, 'out');
    expect(process.env).toEqual(before);
  });
});
