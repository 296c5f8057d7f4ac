import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { redlineFormats } from './redline-format.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `redline`; `done` takes its exit code. */
export function addRedline(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('redline')
    .description('say what a revision changes in meaning, most dangerous first')
    .argument('<revision>', 'earlier revision in git: a tag, a branch, a commit, HEAD~3')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--until <revision>', 'compare with this revision; with the working folder when absent')
    .addOption(
      new Option('--format <format>', 'how to print').choices(redlineFormats).default('text'),
    )
    .option('--to <file>', 'write it into this file instead of printing it')
    .action(async (revision, folder, options) => {
      const { redlineCommand } = await import('./redline.ts');
      done(await redlineCommand(revision, folder, options));
    });

  tellHelp(verb, 'review', {
    notes: [
      'It reads git and changes nothing in it. How a text is wrapped, the order of keys and of files do not count. ' +
        'The format page is an HTML page for A4 paper with change bars.',
    ],
    examples: [
      {
        line: 'tallybolt redline HEAD manual',
        does: 'Tells what the working folder changes against the last commit.',
        runs: false,
      },
      {
        line: 'tallybolt redline v1.2 manual --until v1.3 --format page --to redline.html',
        does: 'Writes a page to print and sign: what v1.3 changes against v1.2.',
        runs: false,
      },
      {
        line: 'tallybolt redline origin/main manual --format markdown --to redline.md',
        does: 'Writes a text for a pull request.',
        runs: false,
      },
    ],
    exits: {
      0: 'nothing changed in meaning',
      1: 'something changed; risky or not, the text says',
      2: 'it could not run: no git, no repository, no such revision, no such folder',
    },
  });
}
