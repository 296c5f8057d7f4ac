import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `scaffold`; `done` takes its exit code. */
export function addScaffold(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('scaffold')
    .description('write a new manual that passes, with commented examples')
    .argument('<folder>', 'where it goes: a new or an empty folder')
    .option('--title <title>', 'title of the manual')
    .option('--machine <name>', 'name of the machine')
    .addOption(
      new Option('--units <units>', 'which units stand first').choices(['metric', 'inch-first']),
    )
    .option('--prefix <prefix>', 'start of every document number, such as WM-3')
    .option('--publisher <name>', 'printed in the title block')
    .action(async (folder, { title, machine, units, prefix, publisher }) => {
      const { scaffoldCommand } = await import('./scaffold.ts');
      done(await scaffoldCommand(folder, { title, machine, units, prefix, publisher }));
    });

  tellHelp(verb, 'writing', {
    notes: [
      'On a terminal it asks for what no option says; in a pipe it asks nothing. The folder is written whole or not at all, and nothing that is there is overwritten.',
    ],
    examples: [
      {
        line: 'tallybolt scaffold mixer --machine "Paddle mixer 3" --units metric',
        does: 'Writes a manual for a machine of that name into the new folder mixer.',
      },
    ],
    exits: {
      0: 'the manual is written',
      2: 'could not run: the folder is not empty, or cannot be written',
    },
  });
}
