import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { listed } from './listed.ts';
import { papers } from './paper.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `print`; `done` takes its exit code. */
export function addPrint(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('print')
    .description('check a manual, then print its sheets as PDF files')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--to <folder>', 'where the PDF files go', 'printed')
    .addOption(
      new Option(
        '--only <procedures>',
        'print only these: replace-anvil,change-blades; all, with the charts, when absent',
      ).argParser(listed),
    )
    .option(
      '--for <condition>',
      'print only what applies to this machine: "winch = yes & brakes = overrun"',
    )
    .addOption(new Option('--paper <paper>', 'size of the paper').choices(papers).default('A4'))
    .option('--draft', 'print in spite of errors, with DRAFT on every sheet', false)
    .action(async (folder, { to, only, for: machine, paper, draft }) => {
      const { printCommand } = await import('./print.ts');
      done(await printCommand(folder, { to, only: only ?? [], for: machine, paper, draft }));
    });

  tellHelp(verb, 'workshop', {
    notes: ['Printing takes an installed Chromium or Chrome. Findings go to standard error.'],
    examples: [
      {
        line: 'tallybolt print manual --only replace-anvil,change-blades --paper Letter',
        does: 'Prints two sheets on Letter.',
      },
      {
        line: 'tallybolt print manual --only change-blades --for "winch = yes"',
        does: 'Prints only what applies to a machine with a winch.',
      },
    ],
    exits: {
      0: 'printed, and nothing was found',
      1: 'findings: with errors nothing is printed, unless with --draft; with warnings it is',
      2: 'could not run: no browser to print with, an unknown procedure or machine',
    },
  });
}
