import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `publish`; `done` takes its exit code. */
export function addPublish(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('publish')
    .description('check a manual, then write its pages')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--to <folder>', 'where the pages go', 'published')
    .option('--draft', 'write them in spite of errors, with DRAFT on every sheet', false)
    .action(async (folder, { to, draft }) => {
      const { publishCommand } = await import('./publish.ts');
      done(await publishCommand(folder, { to, draft }));
    });

  tellHelp(verb, 'workshop', {
    notes: [
      'The folder is replaced as a whole, once all pages are ready. A folder that holds anything else is left alone, and the command stops. Findings go to standard error.',
    ],
    examples: [
      {
        line: 'tallybolt publish manual --to published',
        does: 'Writes the pages; open published/index.html, from disk or from any web server.',
      },
      {
        line: 'tallybolt publish manual --to review --draft',
        does: 'Writes them in spite of errors, with DRAFT on every sheet.',
      },
    ],
    exits: {
      0: 'written, and nothing was found',
      1: 'findings: with errors nothing is written, unless with --draft; with warnings it is',
      2: 'could not run, or the folder cannot be written',
    },
  });
}
