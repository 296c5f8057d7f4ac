import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { listed } from './listed.ts';
import { reportFiles } from './report-file.ts';
import { reportFormats } from './report-format.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `merge`; `done` takes its exit code. */
export function addMerge(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('merge')
    .description('join the shares of a manual that were checked apart, and say what is wrong')
    .argument('<file>', 'what `inspect --share` printed')
    .argument('[file...]', 'that of the other shares, in any order')
    .addOption(
      new Option('--format <format>', 'how to print').choices(reportFormats).default('text'),
    )
    .addOption(
      new Option(
        '--report <format=file>',
        'write the report into a file too: sarif=report.sarif; may be given several times',
      ).argParser(reportFiles),
    )
    .option('--baseline <file>', 'fail only for what this file does not list as known')
    .addOption(
      new Option('--only <rules>', 'show and count only these rules: left-out,left-open').argParser(
        listed,
      ),
    )
    .addOption(
      new Option('--level <level>', 'leave out what is below')
        .choices(['error', 'warning', 'note'])
        .default('note'),
    )
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
