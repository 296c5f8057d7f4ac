import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import {
  baselineOption,
  formatOption,
  levelOption,
  onlyOption,
  reportOption,
} from './report-options.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `merge`; `done` takes its exit code. */
export function addMerge(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('merge')
    .description('join the shares of a manual that were checked apart, and say what is wrong')
    .argument('<file>', 'what `inspect --share` printed')
    .argument('[file...]', 'that of the other shares, in any order')
    .addOption(formatOption())
    .addOption(reportOption())
    .addOption(baselineOption())
    .addOption(onlyOption())
    .addOption(levelOption())
    .action(async (first, rest, { only, report, baseline, ...plain }) => {
      const { mergeCommand } = await import('./merge.ts');
      const options = { ...plain, only: only ?? [], reports: report ?? [], baseline };
      done(await mergeCommand([first, ...rest], options));
    });

  tellHelp(verb, 'review', {
    notes: [
      'The report is the one that inspect gives of the whole manual. The manual itself need not be there: shares carry the texts that findings show.',
    ],
    examples: [
      {
        line: 'tallybolt inspect manual --share 1/2 > 1.json; tallybolt inspect manual --share 2/2 > 2.json; tallybolt merge 1.json 2.json',
        does: 'Checks two halves of a manual, as two machines may do at the same time, and joins them.',
      },
      {
        line: 'tallybolt merge shares/*.json --report sarif=report.sarif',
        does: 'Joins all shares in a folder, and writes the report for another program too.',
        runs: false,
      },
    ],
    exits: {
      0: 'no error and no warning (notes do not count, nor does what --baseline lists)',
      1: 'errors or warnings, as far as --only and --level count them',
      2: 'the shares could not be joined: one is missing, given twice, broken, or of another state of the manual',
    },
  });
}
