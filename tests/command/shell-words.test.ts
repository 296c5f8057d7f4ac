import { spawnSync } from 'node:child_process';
import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { shellScripts } from '../../src/command/shell-scripts.ts';
import { rules } from '../../src/rules/index.ts';
import { type Folder, makeFolder, run } from './run.ts';
import { makeShell, type Shell } from './shim.ts';

const content = fileURLToPath(new URL('../../content', import.meta.url));
const hasShell = (name: string): boolean => spawnSync(name, ['-c', 'exit 0']).status === 0;

let folder: Folder;
let shell: Shell;

beforeAll(async () => {
  folder = await makeFolder();
  shell = await makeShell();
  await cp(content, join(folder.path, 'manual'), { recursive: true });
  await folder.write({
    'tallybolt.bash': shellScripts.bash,
    _tallybolt: shellScripts.zsh,
    'tallybolt.fish': shellScripts.fish,
  });
});
afterAll(async () => {
  await folder.remove();
  await shell.remove();
});

/** What bash would offer: the last word is the one that is typed. */
async function offeredByBash(words: readonly string[]): Promise<readonly string[]> {
  const quoted = ['tallybolt', ...words].map((word) => `'${word}'`).join(' ');
  const { out, err } = await shell.run(
    `source tallybolt.bash; COMP_WORDS=(${quoted}); COMP_CWORD=${words.length}; _tallybolt_next; printf '%s\\n' "\${COMPREPLY[@]}"`,
    folder.path,
  );
  expect(err).toBe('');
  return out.split('\n').filter((line) => line !== '');
}

describe('bash', () => {
  test('is told by the script to ask on Tab', async () => {
    const { out } = await shell.run('source tallybolt.bash; complete -p tallybolt', folder.path);
    expect(out).toBe('complete -F _tallybolt_next tallybolt\n');
  });

  test('completes verbs as the help lists them', async () => {
    const { out } = await run(['--help']);
    const verbs = [...out.matchAll(/^ {2}([a-z-]+) (?:\[|<)/gm)].map(([, verb]) => verb);
    expect(await offeredByBash([''])).toEqual(expect.arrayContaining(verbs));
    expect(await offeredByBash([''])).not.toContain('shell-next');
  });

  test.each([
    [['insp'], ['inspect']],
    [['inspect', '--lev'], ['--level']],
    [
      ['inspect', '--level', ''],
      ['error', 'warning', 'note'],
    ],
    [['inspect', '--level=w'], ['--level=warning']],
    [['inspect', '--level', '=', 'w'], ['warning']],
    [
      ['inspect', '--level', '='],
      ['error', 'warning', 'note'],
    ],
    [['inspect', '--level', 'note', '--lev'], []],
    [
      ['inspect', '--only', 'left-o'],
      ['left-out', 'left-open'],
    ],
    [['inspect', '--only', 'left-out,left-o'], ['left-out,left-open']],
    [['print', 'manual', '--only', 'replace-an'], ['replace-anvil']],
    [['print', 'manual', '--paper', 'L'], ['Letter']],
    [['print', '--only', 'replace-an'], []],
    [['complete', '--in', 'manual', 'replace-an'], ['replace-anvil']],
    [['pull', '--in=manual', 'replace-anvil', 'change-b'], ['change-blades']],
    [['publish', 'man'], ['manual']],
    [['publish', 'manual', '--to', 'manual/fig'], ['manual/figures']],
    [['publish', 'manual', 'more'], []],
    [['help', 'hand'], ['hand-over']],
    [['shell-words', 'f'], ['fish']],
    [['nonsense', ''], []],
    [['--ver'], ['--version']],
  ])('%j', async (words, offered) => {
    expect([...(await offeredByBash(words))].sort()).toEqual([...offered].sort());
  });

  test('knows every rule', async () => {
    const offered = await offeredByBash(['explain', '']);
    expect([...offered].sort()).toEqual(rules.map(({ id }) => id).sort());
  });
});

describe.runIf(hasShell('zsh'))('zsh', () => {
  test('can read its script', async () => {
    expect(await shell.run('zsh -n _tallybolt', folder.path)).toEqual({
      code: 0,
      out: '',
      err: '',
    });
  });

  test('calls for the words of the line, and offers them with what they are for', async () => {
    const asked = `compdef() {}; _describe() { print -rl -- $1 $found }; _files() { print -r -- files $@ }
source ./_tallybolt
for line in 'tallybolt inspect --level n' 'tallybolt publish man' 'tallybolt inspect --le'; do
  words=(\${(z)line}); CURRENT=$#words; _tallybolt
done`;
    await folder.write({ 'ask.zsh': asked });
    const { out, err } = await shell.run('zsh -f ask.zsh', folder.path);
    expect(err).toBe('');
    expect(out).toMatch(
      /^tallybolt\nnote:\nfiles -\/\ntallybolt\n--level:leave out what is below\n$/,
    );
  });
});

describe.runIf(hasShell('fish'))('fish', () => {
  test.each([
    ['tallybolt inspect --level ', ['error', 'note', 'warning']],
    ['tallybolt print manual --only replace-an', ['replace-anvil']],
    ['tallybolt publish man', ['manual/']],
  ])('%s', async (line, offered) => {
    const { out } = await shell.run(
      `fish --no-config -c 'source tallybolt.fish; complete -C "${line}"'`,
      folder.path,
    );
    const words = out.split('\n').flatMap((one) => (one === '' ? [] : [one.split('\t')[0]]));
    expect(words.sort()).toEqual(offered);
  });
});
