import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `hand-over`; `done` takes its exit code. */
export function addHandOver(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('hand-over')
    .description('check a manual, then write the whole of it in an open format for other programs')
    .argument('[folder]', 'folder of the manual', '.')
    .addOption(
      new Option('--to <format>', 'the format: dita is OASIS DITA 1.3')
        .choices(['dita'])
        .default('dita'),
    )
    .option('--into <folder>', 'where the files go', 'handed-over')
    .option('--draft', 'write them in spite of errors, marked as a draft', false)
    .action(async (folder, { into, draft }) => {
      const { handOverCommand } = await import('./hand-over.ts');
      done(await handOverCommand(folder, { into, draft }));
    });

  tellHelp(verb, 'programs', {
    notes: ['The folder is replaced as a whole, as with publish. Findings go to standard error.'],
    examples: [
      {
        line: 'tallybolt hand-over manual --into handed-over',
        does: 'Writes DITA topics and a map; open handed-over/manual.ditamap.',
      },
      {
        line: 'tallybolt hand-over manual --into for-review --draft',
        does: 'Writes them in spite of errors, marked as a draft.',
      },
    ],
    exits: {
      0: 'written, and nothing was found',
      1: 'findings: with errors nothing is written, unless with --draft; with warnings it is',
      2: 'could not run, or the folder cannot be written',
    },
  });
}
