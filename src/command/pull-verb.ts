import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `pull`; `done` takes its exit code. */
export function addPull(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('pull')
    .description('list what must be handed out before a job: tools, parts, consumables, fluids')
    .argument('<procedures...>', 'ids of one procedure or more')
    .option('--in <folder>', 'folder of the manual', '.')
    .option('--for <condition>', 'only for these machines: "feed = hydraulic & winch"')
    .addOption(
      new Option('--format <format>', 'how to print')
        .choices(['text', 'csv', 'json'])
        .default('text'),
    )
    .action(async (procedures, { in: folder, for: machines, format }) => {
      const { pullCommand } = await import('./pull.ts');
      done(await pullCommand(procedures, { in: folder, for: machines, format }));
    });

  tellHelp(verb, 'workshop', {
    notes: [
      'The list goes to standard output. Findings of the manual are not told here, only that there are errors, on standard error.',
    ],
    examples: [
      {
        line: 'tallybolt pull replace-anvil change-blades --in manual --for "!winch"',
        does: 'Lists what two jobs need on a machine without a winch.',
      },
      {
        line: 'tallybolt pull replace-anvil --in manual --format csv > anvil.csv',
        does: 'Writes the list for a spreadsheet.',
      },
    ],
    exits: {
      0: 'the list is printed',
      2: 'could not run: an unknown procedure, or no machine that is meant',
    },
  });
}
