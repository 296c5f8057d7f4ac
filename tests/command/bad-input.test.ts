import { chmod, mkdir, rm, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Finding } from '../../schemas/finding.ts';
import { reportSchema } from '../../schemas/report.ts';
import { type Folder, makeFolder, run, soundManual } from './run.ts';

let folder: Folder;
beforeEach(async () => {
  folder = await makeFolder();
  await folder.write(soundManual);
});
afterEach(() => folder.remove());

const page = soundManual['procedures/oil-hinge.md'];
const second = page.replace('procedure: oil-hinge', 'procedure: second');
const isRoot = process.getuid?.() === 0;

/** What is found in the folder; the command must end with 1 where that is something, and say nothing aside. */
async function findings(): Promise<readonly Finding[]> {
  const { code, out, err } = await run(['inspect', '--format', 'json', folder.path]);
  expect(err).toBe('');
  const report = reportSchema.parse(JSON.parse(out));
  expect(code).toBe(report.findings.length > 0 ? 1 : 0);
  return report.findings;
}

const places = async (): Promise<string[]> =>
  (await findings()).map(({ rule, file, start }) => `${rule} ${file}:${start.line}`);

describe('a text that cannot be read', () => {
  const long = `${page}\n${'The hinge is oiled with care, and then it is oiled again.\n\n'.repeat(90_000)}`;
  test.each([
    ['an empty manual.yaml', 'manual.yaml', '', ['yaml-shape manual.yaml:1']],
    ['a manual.yaml of comments', 'manual.yaml', '# nothing\n', ['yaml-shape manual.yaml:1']],
    ['a manual.yaml that is a list', 'manual.yaml', '- title\n', ['yaml-shape manual.yaml:1']],
    ['broken YAML', 'manual.yaml', 'title: "T\nunits: [\n', ['yaml-broken manual.yaml:1']],
    [
      'broken front matter',
      'procedures/b.md',
      '---\nprocedure: [b\n---\n\n1. Wait.\n',
      ['yaml-broken procedures/b.md:3'],
    ],
    [
      'front matter without an end',
      'procedures/b.md',
      '---\nprocedure: b\n\n1. Wait.\n',
      ['front-matter-missing procedures/b.md:1'],
    ],
    [
      'no front matter',
      'procedures/b.md',
      '1. Wait.\n',
      ['front-matter-missing procedures/b.md:1'],
    ],
    ['an empty file', 'procedures/b.md', '', ['front-matter-missing procedures/b.md:1']],
    [
      'bytes that are not UTF-8',
      'procedures/b.md',
      new Uint8Array(64).fill(0xff),
      ['file-unreadable procedures/b.md:1'],
    ],
    [
      'UTF-16',
      'procedures/b.md',
      Buffer.from(`\uFEFF${second}`, 'utf16le'),
      ['file-unreadable procedures/b.md:1'],
    ],
    [
      'bytes that are not UTF-8 in the catalogue',
      'machines/m.yaml',
      new Uint8Array(64).fill(0xff),
      ['file-unreadable machines/m.yaml:1'],
    ],
    ['zeros', 'procedures/b.md', new Uint8Array(64), ['front-matter-missing procedures/b.md:1']],
    ['5 MB', 'procedures/b.md', long, ['too-large procedures/b.md:1']],
    ['9 MB', 'procedures/b.md', long + long, ['file-unreadable procedures/b.md:1']],
  ])('%s', async (_, file, text, expected) => {
    await folder.write({ [file]: text });
    expect(await places()).toEqual(expected);
  });

  test('manual.yaml that is not UTF-8', async () => {
    await folder.write({ 'manual.yaml': new Uint8Array(64).fill(0xff) });
    expect(await places()).toEqual(['file-unreadable manual.yaml:1']);
  });

  test('a name that only its capital letters or its ending keep from being read', async () => {
    await folder.write({
      'procedures/x.MD': second,
      'procedures/deep/Y.Markdown': second,
      'machines/m.YML': 'machine: m\n',
      'Procedures2/z.md': second,
      'figures/x.SVG': '<svg/>',
    });
    expect((await findings()).map(({ file, message, help }) => [file, message, help])).toEqual(
      [
        ['machines/m.YML', 'machines/m.yml'],
        ['procedures/deep/Y.Markdown', 'procedures/deep/Y.md'],
        ['procedures/x.MD', 'procedures/x.md'],
      ].map(([file = '', right = '']) => [
        file,
        `This file cannot be read: its name would have to be \`${right}\``,
        `Rename it to \`${right}\`.`,
      ]),
    );
  });

  test('says what to do by what is wrong', async () => {
    await folder.write({
      'procedures/b.md': new Uint8Array(64).fill(0xff),
      'procedures/c.md': long + long,
    });
    await mkdir(join(folder.path, 'procedures/d.md'));
    await symlink('gone.md', join(folder.path, 'procedures/e.md'));
    expect((await findings()).map(({ help }) => help)).toEqual([
      'Save it again as plain text in UTF-8, or take it out of the manual.',
      'Split it into several, or take it out of the manual.',
      'Give the folder another name, without the ending of a file.',
      'Put the file itself in its place, or take the link out.',
    ]);
  });

  test.skipIf(isRoot)('a file that may not be read', async () => {
    await folder.write({ 'procedures/b.md': second });
    await chmod(join(folder.path, 'procedures/b.md'), 0);
    const [only, ...more] = await findings();
    expect(more).toEqual([]);
    expect(only).toMatchObject({ rule: 'file-unreadable', data: { reason: 'permission denied' } });
  });

  test.skipIf(isRoot)('a folder that may not be read', async () => {
    await mkdir(join(folder.path, 'procedures/closed'));
    await chmod(join(folder.path, 'procedures/closed'), 0);
    const { code, err } = await run(['inspect', folder.path]);
    await chmod(join(folder.path, 'procedures/closed'), 0o700);
    expect(code).toBe(2);
    expect(err).toMatch(/^tallybolt: The folder .*closed cannot be read: permission denied\.\n/);
  });
});

describe('a text that can be read, whatever it looks like', () => {
  test('with a byte order mark', async () => {
    await folder.write({
      'procedures/oil-hinge.md': `\uFEFF${page}`,
      'manual.yaml': '\uFEFFtitle: T\n',
    });
    expect(await places()).toEqual([]);
  });

  test('with a byte order mark, which is no column of the first line but a letter of the file', async () => {
    await folder.write({ 'manual.yaml': '\uFEFFtitel: T\n', 'procedures/b.md': '\uFEFFText.' });
    expect((await findings()).map(({ file, start, end }) => [file, start, end.column])).toEqual([
      ['manual.yaml', { line: 1, column: 1, offset: 1 }, 6],
      ['procedures/b.md', { line: 1, column: 1, offset: 0 }, 6],
    ]);
    const { out } = await run(['inspect', folder.path]);
    expect(out).toContain('  1 | titel: T\n    | ^^^^^\n');
    expect(out).toContain('  1 | Text.\n    | ^^^^^\n');
  });

  test('with CRLF, at the same lines and columns', async () => {
    const broken = page.replace('3. :install[Push the pin in]{item=hinge-pin}.\n', '');
    await folder.write({ 'procedures/oil-hinge.md': broken });
    const withLf = await findings();
    await folder.write({
      'procedures/oil-hinge.md': broken.replaceAll('\n', '\r\n'),
      'manual.yaml': 'title: T\r\n',
    });
    const withCrLf = await findings();
    expect(withLf).toHaveLength(1);
    const spot = ({ rule, message, start, end }: Finding) =>
      `${rule} ${message} ${start.line}:${start.column}-${end.line}:${end.column}`;
    expect(withCrLf.map(spot)).toEqual(withLf.map(spot));
    const { out } = await run(['inspect', folder.path]);
    expect(out).not.toContain('\r');
  });

  test('in folders with spaces and umlauts', async () => {
    const odd = await makeFolder('tally bolt äöü ß 手册 ');
    try {
      const broken = second.replace('3. :install[Push the pin in]{item=hinge-pin}.\n', '');
      await odd.write({ ...soundManual, 'procedures/Tür und Tor/Öl am Band.md': broken });
      const { code, out } = await run(['inspect', '--format', 'json', odd.path]);
      expect(code).toBe(1);
      expect(
        reportSchema.parse(JSON.parse(out)).findings.map(({ rule, file }) => `${rule} ${file}`),
      ).toEqual(['left-out procedures/Tür und Tor/Öl am Band.md']);
      expect((await run(['inspect', odd.path])).out).toContain(
        'procedures/Tür und Tor/Öl am Band.md:12:4',
      );
    } finally {
      await odd.remove();
    }
  });
});

describe('what contradicts itself', () => {
  test('two procedures of one id', async () => {
    await folder.write({ 'procedures/b.md': page });
    expect(await places()).toEqual(['duplicate-id procedures/oil-hinge.md:2']);
  });

  test('three procedures that perform each other in a ring', async () => {
    const performing = (id: string, other: string): string =>
      `---\nprocedure: ${id}\ntitle: Job ${id}\n---\n\n1. ::perform{procedure=${other}}\n`;
    await folder.write({
      'procedures/a.md': performing('a', 'b'),
      'procedures/b.md': performing('b', 'c'),
      'procedures/c.md': performing('c', 'a'),
    });
    const found = await findings();
    expect(found.map(({ rule }) => rule)).toEqual(['cycle']);
    expect(found[0]?.message).toMatch(/`a` → `b` → `c` → `a`/);
  });

  test('a link out of the folder of the manual', async () => {
    const link = (to: string): string => `See [there](${to}).\n\n1. :loosen`;
    await folder.write({
      'procedures/oil-hinge.md': page.replace('1. :loosen', link('../../secret.md')),
    });
    expect(await places()).toEqual(['link-outside procedures/oil-hinge.md:11']);
    await folder.write({
      'procedures/oil-hinge.md': page.replace('1. :loosen', link('/etc/passwd')),
    });
    expect(await places()).toEqual(['link-outside procedures/oil-hinge.md:11']);
  });

  test('a figure out of the folder of the manual', async () => {
    const figure = ':::figure{src="../../../secret.svg" alt="A door"}\n:::\n\n1. :loosen';
    await folder.write({ 'procedures/oil-hinge.md': page.replace('1. :loosen', figure) });
    expect(await places()).toEqual(['link-outside procedures/oil-hinge.md:11']);
  });
});

describe('links and folders in the file system', () => {
  test('a link that leads out is not followed', async () => {
    const outside = await makeFolder('tallybolt-outside-');
    try {
      await outside.write({ 'secret.md': second, 'deep/secret.md': second });
      await symlink(join(outside.path, 'secret.md'), join(folder.path, 'procedures/file.md'));
      await symlink(join(outside.path, 'deep'), join(folder.path, 'procedures/deep'));
      const found = await findings();
      expect(found.map(({ rule, file, data }) => [rule, file, data.reason])).toEqual([
        [
          'file-unreadable',
          'procedures/deep',
          'it is a link that leads out of the folder of the manual',
        ],
        [
          'file-unreadable',
          'procedures/file.md',
          'it is a link that leads out of the folder of the manual',
        ],
      ]);
    } finally {
      await outside.remove();
    }
  });

  test('a neighbour whose name begins in the same way is outside too', async () => {
    const neighbour = `${folder.path}-2`;
    const other = await makeFolder();
    try {
      await other.write({ 'secret.md': second });
      await symlink(other.path, neighbour);
      await symlink(join(neighbour, 'secret.md'), join(folder.path, 'procedures/file.md'));
      expect(await places()).toEqual(['file-unreadable procedures/file.md:1']);
    } finally {
      await other.remove();
      await rm(neighbour, { force: true });
    }
  });

  test('a link to a file inside is followed', async () => {
    await folder.write({ 'texts/second.md': second.replace('plate-screw}.\n2', 'ghost}.\n2') });
    await symlink('../texts/second.md', join(folder.path, 'procedures/second.md'));
    expect(await places()).toContain('unknown-item procedures/second.md:11');
  });

  test('a manual that is itself a link is read', async () => {
    const link = `${folder.path}-link`;
    await symlink(folder.path, link);
    try {
      expect(await run(['inspect', link])).toMatchObject({ code: 0, err: '' });
    } finally {
      await rm(link);
    }
  });

  test('a link that leads nowhere, or round in a ring, or to a folder', async () => {
    await symlink('gone.md', join(folder.path, 'procedures/b.md'));
    await symlink('c.md', join(folder.path, 'procedures/c.md'));
    await symlink('..', join(folder.path, 'procedures/up'));
    await mkdir(join(folder.path, 'procedures/real'));
    await symlink('real', join(folder.path, 'procedures/d'));
    expect((await findings()).map(({ file, data }) => `${file}: ${data.reason}`)).toEqual([
      'procedures/b.md: it is a link that leads nowhere (it is gone)',
      'procedures/c.md: it is a link that leads nowhere (it leads back to itself)',
      'procedures/d: it is a link to a folder',
      'procedures/up: it is a link that leads out of the folder of the manual',
    ]);
  });

  test('a folder whose name is that of a procedure', async () => {
    await mkdir(join(folder.path, 'procedures/x.md'));
    const found = await findings();
    expect(found.map(({ rule, file, data }) => [rule, file, data.reason])).toEqual([
      ['file-unreadable', 'procedures/x.md', 'it is a folder'],
    ]);
  });

  test('what a manual does not hold is passed over', async () => {
    await folder.write({
      '.git/procedures/x.md': 'x',
      'procedures/.draft.md': 'x',
      'procedures/node_modules/x.md': 'x',
      'notes.md': 'x',
      'published/.tallybolt-site': 'x',
      'published/procedures/x.md': 'x',
    });
    await symlink('/', join(folder.path, 'root'));
    expect(await places()).toEqual([]);
  });
});

test('100,000 findings are found and told', async () => {
  const steps = Array.from(
    { length: 1000 },
    (_, i) => `${i + 1}. ${':check{item=ghost} '.repeat(25)}\n`,
  );
  const ids = ['a', 'b', 'c', 'd'];
  await folder.write(
    Object.fromEntries(
      ids.map((id) => [
        `procedures/${id}.md`,
        `---\nprocedure: ${id}\ntitle: Job ${id}\n---\n\n${steps.join('\n')}`,
      ]),
    ),
  );
  const found = await findings();
  expect(found.filter(({ rule }) => rule === 'unknown-item')).toHaveLength(100_000);
  const { code, out } = await run(['inspect', folder.path]);
  expect(code).toBe(1);
  expect(out).toMatch(/; \d{6} errors.*\.\n$/);
});
