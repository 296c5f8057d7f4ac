import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `complete`; `done` takes its exit code. */
export function addComplete(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('complete')
    .description('write the steps that a procedure lacks before everything is home')
    .argument('<procedure>', 'id of the procedure')
    .option('--in <folder>', 'folder of the manual', '.')
    .option('--dry-run', 'print what would change, and change nothing', false)
    .action(async (procedure, { in: folder, dryRun }) => {
      const { completeCommand } = await import('./complete.ts');
      done(await completeCommand(procedure, { in: folder, dryRun }));
    });

  tellHelp(verb, 'writing', {
    examples: [
      {
        line: 'tallybolt complete replace-anvil --in manual --dry-run',
        does: 'Prints the steps that would be written, and changes nothing.',
      },
      {
        line: 'tallybolt complete replace-anvil --in manual',
        does: 'Writes them into the file of the procedure.',
      },
    ],
    exits: {
      0: 'no step is missing',
      1: 'steps were missing, and are written (with --dry-run: would be)',
      2: 'could not run: an unknown procedure, or the file cannot be written',
    },
  });
}
