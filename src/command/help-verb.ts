import type { Command } from 'commander';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `help`; `done` takes its exit code. */
export function addHelp(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('help')
    .description('print the help of a verb; without a verb, list them')
    .argument('[verb]', 'name of the verb')
    .action(async (name: string | undefined) => {
      const about =
        name === undefined ? program : program.commands.find((one) => one.name() === name);
      if (about === undefined && name !== undefined) {
        const [{ nearest }, { verbNames }] = await Promise.all([
          import('../source/index.ts'),
          import('./mistake.ts'),
        ]);
        const near = nearest(name, verbNames(program));
        throw new CannotRun(
          `There is no verb ${name}.`,
          near === undefined ? '`tallybolt help` lists them.' : `Did you mean ${near}?`,
        );
      }
      about?.outputHelp();
      done(0);
    });
  tellHelp(verb, 'programs', {
    examples: [
      { line: 'tallybolt help', does: 'Lists the verbs by who uses them.' },
      { line: 'tallybolt help print', does: 'The same as tallybolt print --help.' },
    ],
    exits: { 0: 'printed', 2: 'there is no such verb' },
  });
}
