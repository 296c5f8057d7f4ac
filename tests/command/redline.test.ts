import { execFile } from 'node:child_process';
import { chmod, mkdir, readFile, rm, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { redlineSchema } from '../../schemas/redline.ts';
import { manual, withEdits } from '../redline/compare.ts';
import { type Folder, makeFolder, type Ran, run } from './run.ts';

const sh = promisify(execFile);

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder('tallybolt-redline-');
  await git('init', '-q', '-b', 'main');
});
afterEach(() => folder.remove());

/** No settings of the machine, so that its hooks, signatures and line ends do not count. */
const env = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_SYSTEM: '/dev/null',
  GIT_AUTHOR_NAME: 'Ada Writer',
  GIT_AUTHOR_EMAIL: 'ada@example.com',
  GIT_COMMITTER_NAME: 'Ada Writer',
  GIT_COMMITTER_EMAIL: 'ada@example.com',
  GIT_AUTHOR_DATE: '2026-03-02T10:00:00Z',
  GIT_COMMITTER_DATE: '2026-03-02T10:00:00Z',
};
const git = (...words: string[]) =>
  sh('git', words, { cwd: folder.path, env: { ...process.env, ...env } });

async function commit(tag: string): Promise<void> {
  await git('add', '-A');
  await git('commit', '-q', '-m', tag);
  await git('tag', tag);
}

type Texts = Readonly<Record<string, string>>;
const below = (name: string, texts: Texts): Texts =>
  Object.fromEntries(Object.entries(texts).map(([path, text]) => [`${name}/${path}`, text]));

const redline = (...words: string[]): Promise<Ran> =>
  run(['redline', ...words], folder.path, { ...env, NO_COLOR: '1' });

const weaker = withEdits(
  ['machine', '45 N·m', '40 N·m'],
  ['job', '1. :isolate{item=mains}.\n', ''],
  ['job', 'Pull the old seal', 'Draw the old seal'],
);

describe('against the working folder', () => {
  beforeEach(async () => {
    await folder.write(below('book', manual));
    await commit('v1');
  });

  test('nothing changed: 0, and one sentence', async () => {
    const { code, out, err } = await redline('v1', 'book');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Press manual: v1 \([0-9a-f]+, 2026-03-02\) → the working folder\n/);
    expect(out).toContain('Nothing changed in meaning.');
  });

  test('risk first, words last: 1', async () => {
    await folder.write(below('book', weaker));
    const { code, out, err } = await redline('v1', 'book');
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const at = (text: string): number => out.indexOf(text);
    const order = [
      'Protection taken away or weakened',
      'Step removed: “isolate mains supply”',
      'performed by yearly-service',
      'Torque of cover bolt lowered',
      'reaches change-seal, yearly-service (through change-seal)',
      'Words only',
      'New findings',
    ].map(at);
    expect(order).not.toContain(-1);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(out).toContain('machines/press.yaml:4');
  });

  test('in a git hook, which names the repository but not its top', async () => {
    const hook = { ...env, GIT_DIR: join(folder.path, '.git'), GIT_INDEX_FILE: 'elsewhere' };
    const { code, out, err } = await run(['redline', 'v1', 'book'], folder.path, hook);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Nothing changed in meaning.');
  });

  test('how texts are wrapped and their lines end is no change', async () => {
    const job = (manual['procedures/change-seal.md'] ?? '').replace(
      'Lift the cover off with',
      'Lift the cover\n   off with',
    );
    await folder.write({ 'book/procedures/change-seal.md': job.replaceAll('\n', '\r\n') });
    expect(await redline('HEAD', 'book')).toMatchObject({ code: 0 });
  });

  test('the formats: JSON by its schema, Markdown, a page', async () => {
    await folder.write(below('book', weaker));
    const json = redlineSchema.parse(
      JSON.parse((await redline('v1', 'book', '--format', 'json')).out),
    );
    expect(json.before).toMatchObject({ revision: 'v1', date: '2026-03-02' });
    expect(json.summary).toMatchObject({ protection: 1, joint: 1, words: 1 });
    const markdown = await redline('v1', 'book', '--format', 'markdown');
    expect(markdown.code).toBe(1);
    expect(markdown.out).toMatch(/^## What changed in Press manual$/m);
    expect(markdown.out).toMatch(/^- \*\*change-seal, step 1\*\*: Step removed/m);
    const page = await redline('v1', 'book', '--format', 'page', '--to', 'redline.html');
    expect(page).toMatchObject({ code: 1, out: 'Written to redline.html.\n', err: '' });
    const html = await readFile(join(folder.path, 'redline.html'), 'utf8');
    expect(html).toMatch(/^<!doctype html><html lang="en"/);
    expect(html).toContain('<li class="change risk">');
    expect(html).not.toContain('<script');
  });

  test('--to never writes over a text of the manual', async () => {
    await folder.write(below('book', weaker));
    const { code, err } = await redline('v1', 'book', '--to', 'book/manual.yaml');
    expect(code).toBe(2);
    expect(err).toContain('is a text of the manual');
    expect(await readFile(join(folder.path, 'book/manual.yaml'), 'utf8')).toBe(
      manual['manual.yaml'],
    );
  });

  test('what cannot be read is told', async () => {
    await folder.write({ 'book/machines/press.yaml': 'machine: press\nname: [\n' });
    const { code, err } = await redline('v1', 'book');
    expect(code).toBe(1);
    expect(err).toContain('machines/press.yaml cannot be read');
  });
});

describe('two revisions', () => {
  test('without the working folder, which may be gone', async () => {
    await folder.write(below('a book', manual));
    await commit('v1');
    await folder.write(below('a book', weaker));
    await commit('v2');
    await rm(join(folder.path, 'a book'), { recursive: true });
    const there = await redline('v1', 'a book', '--until', 'v2');
    expect(there.code).toBe(1);
    expect(there.out).toContain('Torque of cover bolt lowered');
    const back = await redline('v2', 'a book', '--until', 'v1');
    expect(back.out).toContain('Torque of cover bolt raised');
    expect(await redline('v1', 'a book', '--until', 'v1')).toMatchObject({ code: 0 });
    expect((await git('status', '--porcelain')).stdout).toContain(' D "a book/manual.yaml"');
  });

  test('odd names, pictures, links and files that are left out', async () => {
    const png = Buffer.from('89504e470d0a1a0a00', 'hex');
    await folder.write({
      ...below('book', manual),
      'book/figures/bild\u00e4 "1"\n.png': png,
      'book/.hidden/procedures/x.md': 'x',
      'book/old/.tallybolt-site': 'made',
      'book/old/procedures/y.md': 'y',
      'book/node_modules/procedures/z.md': 'z',
      'outside.md': 'secret',
    });
    await symlink('change-seal.md', join(folder.path, 'book/procedures/same.md'));
    await symlink('../../outside.md', join(folder.path, 'book/procedures/out.md'));
    await commit('v1');
    const { code, out, err } = await redline('v1', 'book');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).not.toContain('secret');
    expect((await redline('v1', 'book', '--until', 'v1')).code).toBe(0);
  });

  test('a manual that was not there before is new as a whole', async () => {
    await folder.write({ 'README.md': 'Soon.' });
    await commit('v0');
    await folder.write(below('book', manual));
    const { code, out, err } = await redline('v0', 'book');
    expect(code).toBe(1);
    expect(err).toContain('In v0 there is no manual in book, so that everything in it is new.');
    expect(out).toContain('Procedure added: “Change the seal”');
    await commit('v1');
    const gone = await redline('v1', 'book', '--until', 'v0');
    expect(gone).toMatchObject({ code: 2, out: '' });
    expect(gone.err).toContain('In v0 there is no manual in book');
  });
});

describe('what cannot run says why, and ends with 2', () => {
  const stops = async (ran: Promise<Ran>, ...words: string[]): Promise<void> => {
    const { code, out, err } = await ran;
    expect({ code, out }).toEqual({ code: 2, out: '' });
    for (const word of words) expect(err).toContain(word);
    expect(err).not.toMatch(/^\s+at /m);
  };

  test('no repository', async () => {
    await folder.write(manual);
    await rm(join(folder.path, '.git'), { recursive: true });
    await stops(redline('v1'), 'is not in a git repository', 'git init');
  });

  test('no commit yet, no such revision, no such folder', async () => {
    await folder.write(manual);
    await stops(redline('v1'), 'nothing was committed');
    await commit('v1');
    await stops(redline('v9'), 'There is no revision v9', 'git tag');
    await stops(redline('v1', '--until', 'v9'), 'There is no revision v9');
    await stops(redline('v1', 'nowhere'), 'There is no folder');
    await stops(redline('HEAD:manual.yaml'), 'There is no revision');
  });

  test('a revision is never an option', async () => {
    await folder.write(manual);
    await commit('v1');
    await stops(
      redline('--', '--output=hacked'),
      '“--output=hacked” cannot be the name of a revision',
    );
    await stops(redline('v1', '--until', '--all'), 'cannot be the name of a revision');
    await stops(redline(''), 'cannot be the name of a revision');
    expect((await git('status', '--porcelain')).stdout).toBe('');
  });

  test('a clone with the newest commits only', async () => {
    await folder.write(manual);
    await commit('v1');
    await folder.write(weaker);
    await commit('v2');
    await git('clone', '-q', '--depth', '1', '--no-tags', `file://${folder.path}`, 'shallow');
    await stops(
      run(['redline', 'HEAD~1'], join(folder.path, 'shallow'), env),
      'only the newest commits',
      'git fetch --unshallow',
    );
  });

  test('no git', async () => {
    await folder.write(manual);
    const empty = join(folder.path, 'empty');
    await mkdir(empty);
    await chmod(empty, 0o755);
    await stops(run(['redline', 'v1'], folder.path, { ...env, PATH: empty }), 'git was not found');
  });
});
