import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { rules } from '../../src/rules/index.ts';
import { run } from './run.ts';

const verbs = ['inspect', 'publish', 'print', 'complete', 'pull', 'hand-over', 'explain'];

test('--help lists the verbs and the exit codes', async () => {
  const { code, out, err } = await run(['--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const listed = [...out.matchAll(/^ {2}([a-z-]+) \[/gm)].map(([, verb]) => verb);
  expect(listed.filter((verb) => verb !== 'help')).toEqual(verbs);
  expect(out).toContain('Exit codes: 0 clean, 1 findings, 2 could not run.');
});

test.each(verbs)('%s --help says how it is called, with an example', async (verb) => {
  const { code, out, err } = await run([verb, '--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain(`Usage: tallybolt ${verb} `);
  expect(out).toContain(`Example:\n  tallybolt ${verb} `);
});

test('--version is that of the package', async () => {
  const file = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  const { code, out } = await run(['--version']);
  expect({ code, out }).toEqual({ code: 0, out: `${JSON.parse(file).version}\n` });
});

describe('what was mistyped ends with 2 and a plain message', () => {
  test.each([
    [['inspct'], "unknown command 'inspct'\n(Did you mean inspect?)"],
    [['inspect', '--frmat', 'json'], "unknown option '--frmat'\n(Did you mean --format?)"],
    [['publish', '--drft'], "unknown option '--drft'\n(Did you mean --draft?)"],
    [['inspect', '--format', 'jsn'], 'Allowed choices are text, json'],
    [['inspect', '--level', 'fatal'], 'Allowed choices are error, warning, note'],
    [['inspect', '--only'], "option '--only <rules>' argument missing"],
    [['inspect', 'a', 'b'], "too many arguments for 'inspect'"],
    [[], 'Usage: tallybolt'],
    [['explain', 'nonsense'], 'There is no rule nonsense.\nRun `tallybolt explain` for the list.'],
    [['explain', 'left-otu'], 'There is no rule left-otu.\nDid you mean left-out?'],
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

test('explain without a rule lists every rule with its level', async () => {
  const { code, out } = await run(['explain']);
  const listed = [...out.matchAll(/^ {2}(\S+) +(error|warning|note)$/gm)];
  expect(code).toBe(0);
  expect(listed.map(([, id, level]) => `${id} ${level}`).sort()).toEqual(
    rules.map(({ id, level }) => `${id} ${level}`).sort(),
  );
});
