import { spawnSync } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { canOverwrite, wantsColour } from '../../src/command/terminal.ts';
import { brokenManual, type Folder, makeFolder, type Ran, soundManual } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

/** `script` of util-linux gives a program a terminal; what it shows comes back as standard output. */
const hasScript = spawnSync('script', ['-qec', 'exit 0', '/dev/null']).status === 0;
const colour = '\u001b[1m';
const many = 320;

let folder: Folder;
let shell: Shell;

beforeAll(async () => {
  folder = await makeFolder('tallybolt-terminal-');
  shell = await makeShell();
  const in_ = (name: string, files: Readonly<Record<string, string>>): Record<string, string> =>
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`${name}/${path}`, text]));
  await folder.write({ ...in_('sound', soundManual), ...in_('broken', brokenManual) });
  const sheet = soundManual['procedures/oil-hinge.md'];
  const second = sheet.replace('oil-hinge', 'oil-second').replace('Oil the', 'Oil the second');
  await folder.write({ ...in_('two', soundManual), 'two/procedures/second.md': second });
  await folder.write(
    Object.fromEntries(
      Array.from({ length: many }, (_, i) => [
        `many/procedures/oil-${i}.md`,
        sheet.replace('oil-hinge', `oil-${i}`).replace('Oil the', `Oil the ${i}.`),
      ]),
    ),
  );
  await folder.write({ 'many/manual.yaml': soundManual['manual.yaml'] });
});
afterAll(async () => {
  await folder.remove();
  await shell.remove();
});

const plain = { NO_COLOR: '', FORCE_COLOR: '', TERM: 'xterm', CI: '' };
const onTerminal = (line: string, env: Readonly<Record<string, string>> = {}): Promise<Ran> =>
  shell.run(`script -qec '${line}' /dev/null`, folder.path, { ...plain, ...env });
const inPipe = (line: string, env: Readonly<Record<string, string>> = {}): Promise<Ran> =>
  shell.run(line, folder.path, { ...plain, ...env });

// NO_COLOR: https://no-color.org, "when present and not an empty string (regardless of its value)".
// FORCE_COLOR: https://force-color.org, the same for turning them on; in its example it is looked at last, and wins.
// That 0 and false turn it off is common practice.
describe('colours by the environment', () => {
  test.each([
    [true, {}, true],
    [false, {}, false],
    [true, { NO_COLOR: '1' }, false],
    [true, { NO_COLOR: '0' }, false],
    [true, { NO_COLOR: '' }, true],
    [true, { TERM: 'dumb' }, false],
    [false, { FORCE_COLOR: '1' }, true],
    [false, { FORCE_COLOR: '' }, false],
    [true, { FORCE_COLOR: '0' }, false],
    [false, { FORCE_COLOR: '1', NO_COLOR: '1' }, true],
    [false, { FORCE_COLOR: '1', TERM: 'dumb' }, true],
  ])('terminal %j with %j: %j', (isTerminal, env, wanted) => {
    expect(wantsColour(isTerminal, env)).toBe(wanted);
  });

  test('nothing is written over without a terminal', () => {
    expect(canOverwrite(process.stdout, {})).toBe(process.stdout.isTTY === true);
  });
});

describe('in a pipe', () => {
  test('a report has no colours and no signs of a terminal', async () => {
    const { code, out, err } = await inPipe('tallybolt inspect broken');
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).not.toContain('\u001b');
    expect(out).not.toContain('\r');
  });

  test('FORCE_COLOR gives it colours', async () => {
    expect((await inPipe('tallybolt inspect broken', { FORCE_COLOR: '1' })).out).toContain(colour);
  });

  test('long work is quiet', async () => {
    const { out, err } = await inPipe('tallybolt inspect many');
    expect(err).toBe('');
    expect(out).toContain(`${many} procedures`);
  });

  test('a reader that has enough ends it without a word', async () => {
    const { err } = await inPipe('tallybolt explain left-out | head -1');
    expect(err).toBe('');
  });
});

describe.runIf(hasScript)('on a terminal', () => {
  test('a report has colours', async () => {
    const { code, out } = await onTerminal('tallybolt inspect broken');
    expect(code).toBe(1);
    expect(out).toContain(colour);
  });

  test.each([
    ['NO_COLOR', '1'],
    ['TERM', 'dumb'],
  ])('it has none with %s=%s', async (name, value) => {
    expect((await onTerminal('tallybolt inspect broken', { [name]: value })).out).not.toContain(
      '\u001b',
    );
  });

  test('a long check says that it goes on, and takes the line away', async () => {
    const { out } = await onTerminal('tallybolt inspect many');
    expect(out).toContain(`Checking ${many + 1} files …\r\u001b[K`);
  });

  test.each([
    ['CI', 'true'],
    ['TERM', 'dumb'],
  ])('it does not with %s=%s', async (name, value) => {
    const { out } = await onTerminal('tallybolt inspect many', { [name]: value });
    expect(out).not.toContain('Checking');
    expect(out).toContain(`${many} procedures`);
  });

  test('a small check shows its answer alone', async () => {
    const { out } = await onTerminal('tallybolt inspect sound');
    expect(out).not.toContain('Checking');
  });

  test('publishing shows how many pages there are', { timeout: 60_000 }, async () => {
    const { code, out } = await onTerminal('tallybolt publish two --to pages');
    expect(code).toBe(0);
    expect(out).toContain('Making pages [');
    expect(out).toContain('of 2');
    expect(out).toMatch(/2 sheets published: open .*\r\n$/);
  });
});
