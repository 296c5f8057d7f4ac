import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { describe, expect, test } from 'vitest';
import { commandLine } from '../../src/command/main.ts';
import { packageFile } from '../../src/command/package-root.ts';
import { referenceOf } from '../../src/command/reference.ts';
import { referenceFiles } from '../../src/command/reference-files.ts';
import { referenceMarkdown } from '../../src/command/reference-markdown.ts';
import { referenceRoff } from '../../src/command/reference-roff.ts';
import { tellHelp } from '../../src/command/verb-help.ts';

const program = commandLine(() => {});
const hasGroff = spawnSync('groff', ['--version']).status === 0;

/** What `man` shows in lines of 200 columns; it must have nothing to complain of. */
function shown(roff: string): string {
  const { stdout, stderr } = spawnSync(
    'groff',
    ['-man', '-ww', '-Tutf8', '-P-cbou', '-rLL=200n', '-rHY=0'],
    { input: roff, encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  return stdout;
}

test.each(Object.entries(referenceFiles(program)))(
  '%s is that of the verbs; `npm run reference` writes it anew',
  (path, text) => {
    expect(readFileSync(packageFile(path), 'utf8')).toBe(text);
  },
);

test('every verb and every option of the help is in the reference', () => {
  const { groups } = referenceOf(program);
  const told = groups.flatMap(({ verbs }) =>
    verbs.flatMap(({ name, options }) => [name, ...options.map(({ word }) => `${name} ${word}`)]),
  );
  const helped = program
    .createHelp()
    .visibleCommands(program)
    .flatMap((verb) => [
      verb.name(),
      ...verb.options.filter(({ hidden }) => !hidden).map(({ flags }) => `${verb.name()} ${flags}`),
    ]);
  expect([...told].sort()).toEqual([...helped].sort());
});

test('the package brings the page for man', () => {
  const { man } = JSON.parse(readFileSync(packageFile('package.json'), 'utf8'));
  expect(man).toBe('./dist/site/man/tallybolt.1');
});

describe('signs that the languages of the pages would take for their own', () => {
  const odd = new Command('odd').description('does odd things');
  const verb = odd
    .command('try')
    .description('.dots at the start, and \\backslashes')
    .addOption(new Option('--from-to <file>', 'it\'s 5 µm "wide" ~ `a^b` <c> *d*'));
  tellHelp(verb, 'writing', {
    notes: ["'Quoted first'."],
    examples: [{ line: "odd try --from-to 'a\\b.txt'", does: '.Starts with a dot.' }],
    exits: { 0: 'done' },
  });
  const reference = referenceOf(odd);

  test.runIf(hasGroff)('are shown by man as they were written', () => {
    const page = shown(referenceRoff(reference));
    for (const words of [
      '.dots at the start, and \\backslashes.',
      '--from-to <file>',
      'it\'s 5 µm "wide" ~ `a^b` <c> *d*',
      "'Quoted first'.",
      "    odd try --from-to 'a\\b.txt'\n",
      '.Starts with a dot.',
    ])
      expect(page).toContain(words);
  });

  test('stay words in Markdown', () => {
    expect(referenceMarkdown(reference)).toContain(
      '`--from-to <file>`: it\'s 5 µm "wide" ~ `a^b` \\<c> \\*d\\*',
    );
  });
});

test.runIf(hasGroff)('man shows the page without a complaint', () => {
  const page = shown(readFileSync(packageFile('site/man/tallybolt.1'), 'utf8'));
  expect(page).toMatch(/^TALLYBOLT\(1\)/);
  expect(page).toContain('tallybolt inspect [options] [folder]');
  expect(page).toContain('--write-baseline <file>');
});
