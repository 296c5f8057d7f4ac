import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.ts';
import {
  baselineOption,
  formatOption,
  levelOption,
  onlyOption,
  reportOption,
} from './report-options.ts';
import { shareMeant } from './share-meant.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `inspect`; `done` takes its exit code. */
export function addInspect(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('inspect')
    .description('check a manual and say what is wrong')
    .argument('[folder]', 'folder of the manual', '.')
    .addOption(formatOption())
    .addOption(reportOption())
    .addOption(baselineOption())
    .option(
      '--write-baseline <file>',
      'list all findings of today in this file; if it is there, take out what is gone',
    )
    .addOption(onlyOption())
    .addOption(levelOption())
    .option(
      '--keep-in <folder>',
      'where results are kept for the next check, which looks only at what has changed',
    )
    .option('--afresh', 'use no results of an earlier check, and keep none', false)
    .addOption(
      new Option(
        '--share <share>',
        'check one share of the manual, such as 3/8, and print what merge needs of it',
      )
        .argParser(shareMeant)
        .conflicts(notOfAShare),
    )
    .option('--untracked', 'list words of work without a directive, with the one to write', false)
    .option('--write', 'with --untracked: write what is clear into the files', false)
    .option('--dry-run', 'with --untracked: print what --write would change', false)
    .action(async (folder, options) => {
      const { only, report, baseline, writeBaseline, untracked, write, dryRun, share, ...plain } =
        options;
      if (untracked || write || dryRun) {
        const { untrackedCommand } = await import('./untracked.ts');
        done(await untrackedCommand(folder, options));
        return;
      }
      if (share !== undefined) {
        const { inspectShareCommand } = await import('./inspect-share.ts');
        done(await inspectShareCommand(folder, share));
        return;
      }
      const { inspectCommand } = await import('./inspect.ts');
      const files = { reports: report ?? [], baseline, writeBaseline };
      done(await inspectCommand(folder, { ...plain, only: only ?? [], ...files }));
    });

  tellHelp(verb, 'writing', {
    notes: ['The report goes to standard output, why it could not run to standard error.'],
    examples: [
      {
        line: 'tallybolt inspect manual',
        does: 'Checks the manual in the folder manual, and prints what is wrong.',
      },
      {
        line: 'tallybolt inspect manual --only left-out,left-open',
        does: 'Tells only what stays out or open.',
      },
      {
        line: 'tallybolt inspect manual --level error --format json > report.json',
        does: 'Writes the errors for a program; see report.schema.json.',
      },
      {
        line: 'tallybolt inspect manual --report sarif=report.sarif --report junit=report.xml',
        does: 'Prints the report, and writes it in two formats for other programs.',
      },
      {
        line: 'tallybolt inspect manual --write-baseline known.json',
        does: 'Lists what the manual is known to have; later only takes out what is gone.',
      },
      {
        line: 'tallybolt inspect manual --baseline known.json',
        does: 'Fails for what is not in that list.',
      },
      {
        line: 'tallybolt inspect manual --share 3/8 > 3.json',
        does: 'Checks the third of eight shares; `tallybolt merge` joins them.',
      },
      {
        line: 'tallybolt inspect manual --untracked --dry-run',
        does: 'Prints the directives and entries that --write would write around plain words.',
      },
    ],
    exits: {
      0: 'no error and no warning (notes do not count, nor does what --baseline lists); with --share: it was checked, whatever was found',
      1: 'errors or warnings, as far as --only and --level count them',
      2: 'the check could not run: no such folder, a mistyped option, a baseline that is missing or broken',
    },
  });
}

/** What is said of the whole manual, by `merge`. */
const notOfAShare: string[] = [
  'format',
  'report',
  'baseline',
  'writeBaseline',
  'only',
  'level',
  'keepIn',
  'untracked',
  'write',
  'dryRun',
];
