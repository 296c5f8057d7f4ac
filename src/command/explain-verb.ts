import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `explain`; `done` takes its exit code. */
export function addExplain(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('explain')
    .description('say what a rule catches, why, and what to do; without a rule, list them')
    .argument('[rule]', 'id of a rule, or the name of a family of rules')
    .action(async (rule) => {
      const { explainCommand } = await import('./explain.ts');
      done(await explainCommand(rule));
    });

  tellHelp(verb, 'writing', {
    examples: [
      {
        line: 'tallybolt explain left-out',
        does: 'Says what the rule left-out catches, why, and what to do, with examples.',
      },
      { line: 'tallybolt explain balance', does: 'Lists the rules on balance.' },
      { line: 'tallybolt explain', does: 'Lists all rules with their levels.' },
    ],
    exits: {
      0: 'printed',
      2: 'there is no such rule, and no such family',
    },
  });
}
