import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { commandLine } from '../../src/command/main.ts';
import { helpOf } from '../../src/command/verb-help.ts';
import { rules } from '../../src/rules/index.ts';
import { run } from './run.ts';

const verbs = commandLine(() => {}).commands.filter((verb) => helpOf(verb) !== undefined);
const names = verbs.map((verb) => verb.name());

test('--help lists the verbs and the exit codes', async () => {
  const { code, out, err } = await run(['--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const listed = [...out.matchAll(/^ {2}([a-z-]+)(?: [[<]| {2})/gm)].map(([, verb]) => verb);
  expect(listed.sort()).toEqual([...names].sort());
  expect(out).toContain('Exit codes: 0 clean, 1 findings, 2 could not run.');
});

test('every verb tells its exit codes and has examples of itself', () => {
  const program = commandLine(() => {});
  const shown = program.createHelp().visibleCommands(program);
  expect(shown.map((verb) => verb.name())).toEqual(names);
  for (const verb of verbs) {
    const help = helpOf(verb);
    const lines = help?.examples.map(({ line }) => line) ?? [];
    expect([verb.name(), lines.length > 0]).toEqual([verb.name(), true]);
    for (const line of lines) expect(line).toMatch(new RegExp(`\\btallybolt ${verb.name()}\\b`));
    expect(Object.keys(help?.exits ?? {})).toEqual(expect.arrayContaining(['0']));
  }
});

test.each(names)('%s --help says how it is called, with examples and exit codes', async (verb) => {
  const { code, out, err } = await run([verb, '--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain(`Usage: tallybolt ${verb} `);
  expect(out).toMatch(/\nExamples:\n {2}\S.*\n {6}[A-Z]/);
  expect(out).toMatch(/\nExit codes:\n {2}0 {2}\S/);
});

test('--version is that of the package', async () => {
  const file = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  const { code, out } = await run(['--version']);
  expect({ code, out }).toEqual({ code: 0, out: `${JSON.parse(file).version}\n` });
});

describe('what was mistyped ends with 2 and a plain message', () => {
  test.each([
    [['inspct'], 'tallybolt: There is no verb inspct.\nDid you mean inspect?\n'],
    [['redress'], 'tallybolt: There is no verb redress.\nSee `tallybolt --help`.\n'],
    [['help', 'prnt'], 'tallybolt: There is no verb prnt.\nDid you mean print?\n'],
    [['--versoin'], 'tallybolt has no option --versoin.\nDid you mean --version?'],
    [['inspect', '--frmat', 'json'], 'inspect has no option --frmat.\nDid you mean --format?'],
    [['publish', '--drft'], 'publish has no option --drft.\nDid you mean --draft?'],
    [['print', '--onyl=a'], 'print has no option --onyl.\nDid you mean --only?'],
    [['inspect', '--format', 'jsn'], 'cannot be “jsn”, only text'],
    [['inspect', '--format', 'jsn'], '\nDid you mean json?\n'],
    [['print', '--paper', 'letter'], 'only A4 or Letter.\nDid you mean Letter?'],
    [
      ['inspect', '--level', 'fatal'],
      'only error, warning or note.\nSee `tallybolt inspect --help`.',
    ],
    [['inspect', '--only'], 'The option --only <rules> needs a value.'],
    [['inspect', '--only', ','], 'It names nothing.'],
    [['inspect', '--only', 'left-ot', '.'], 'There is no rule left-ot.\nDid you mean left-out?'],
    [['inspect', 'a', 'b'], 'inspect takes fewer words: a, b.\nSee `tallybolt inspect --help`.'],
    [['pull'], 'pull needs to know: which procedures?\nSee `tallybolt pull --help`.'],
    [[], 'Usage: tallybolt'],
    [['explain', 'nonsense'], 'There is no rule nonsense.\nRun `tallybolt explain` for the list.'],
    [['explain', 'left-otu'], 'There is no rule left-otu.\nDid you mean left-out?'],
    [['explain', 'blance'], 'There is no rule blance.\nDid you mean balance?'],
    [['explain', '../../package'], 'There is no rule ../../package.'],
  ])('%j', async (words, message) => {
    const { code, out, err } = await run(words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
    expect(err).not.toContain('    at ');
  });
});

test('explain prints the page of a rule with a bad and a good example', async () => {
  const { code, out, err } = await run(['explain', 'left-out']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(
    /^Fasteners or parts that are taken out.*\n## Bad\n.*\^ left-out: .*\n## Good\n/s,
  );
});

describe('what is mistyped within a manual', () => {
  const content = fileURLToPath(new URL('../../content', import.meta.url));
  test.each([
    [
      ['complete', 'replace-anvl'],
      'There is no procedure replace-anvl here.\nDid you mean replace-anvil?',
    ],
    [['pull', 'replace-anvl'], 'Did you mean replace-anvil?'],
    [['print', '--only', 'replace-anvl', '--to', 'never'], 'Did you mean replace-anvil?'],
    [['complete', 'anvil-bolt'], 'Did you mean one of replace-anvil, set-anvil-gap?'],
    [['pull', 'oxidise'], 'Its id stands after `procedure:` in its file.'],
    [['pull', 'replace-anvil', '--for', 'wnch'], 'perhaps “winch” is meant'],
    [['pull', 'replace-anvil', '--for', 'brakes = overun'], 'perhaps “overrun” is meant'],
    [['print', '--for', 'brakes = overun', '--to', 'never'], 'perhaps “overrun” is meant'],
    [
      ['inspect', '../cotent'],
      `There is no folder ${join(content, '../cotent')}.\nDid you mean ${content}?`,
    ],
    [
      ['inspect', '..'],
      `There is no manual.yaml in ${dirname(content)}.\nDid you mean ${content}?`,
    ],
  ])('%j', async (words, message) => {
    const { code, out, err } = await run(words, content);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
  });
});

test('explain with a family lists its rules alone', async () => {
  const { code, out } = await run(['explain', 'balance']);
  const listed = [...out.matchAll(/^ {2}(\S+) /gm)].map(([, id]) => id);
  expect(code).toBe(0);
  expect(listed).toEqual(rules.filter(({ family }) => family === 'balance').map(({ id }) => id));
});

test('explain without a rule lists every rule with its level', async () => {
  const { code, out } = await run(['explain']);
  const listed = [...out.matchAll(/^ {2}(\S+) +(error|warning|note)$/gm)];
  expect(code).toBe(0);
  expect(listed.map(([, id, level]) => `${id} ${level}`).sort()).toEqual(
    rules.map(({ id, level }) => `${id} ${level}`).sort(),
  );
});
