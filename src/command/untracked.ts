import { createTwoFilesPatch } from 'diff';
import {
  type CountedManual,
  countedManual,
  untrackedAsText,
  untrackedReport,
} from '../adopt/index.ts';
import { CannotRun } from './cannot-run.ts';
import { type Checked, checkFolder } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import type { ReportFormat } from './report-format.ts';
import { complain, paintFor, say } from './terminal.ts';
import { type Change, writeCounted } from './write-counted.ts';

export interface UntrackedOptions {
  readonly format: ReportFormat;
  readonly untracked: boolean;
  readonly report?: readonly unknown[] | undefined;
  readonly baseline?: string | undefined;
  readonly writeBaseline?: string | undefined;
  /** Write what can be written into the files. */
  readonly write: boolean;
  /** Print what would be written, and change nothing. */
  readonly dryRun: boolean;
}

/**
 * Lists words that act without a directive, each with the directive that would count them. 1 where the check tells some
 * of them (or did, before they were written), 0 where it tells none, 2 a file could not be written.
 */
export async function untrackedCommand(
  folder: string,
  options: UntrackedOptions,
): Promise<ExitCode> {
  refuseOtherOptions(options);
  const { format, write, dryRun } = options;
  const checked = await checkFolder(folder);
  const report = untrackedReport(checked.linked, checked.textOf);
  const tell = format === 'json' ? complain : say;
  if (format === 'json') say(JSON.stringify(report, undefined, 2));
  else if (!write && !dryRun) say(untrackedAsText(report, paintFor(process.stdout)));
  if (dryRun || write) {
    const counted = countedManual(checked.files);
    const changes = changesOf(counted, checked);
    if (dryRun) showAll(changes, counted, tell);
    else if (!(await writeAll(changes, counted, checked, tell))) return 2;
  }
  return checked.report.findings.some(({ rule }) => rule === 'untracked-action') ? 1 : 0;
}

function refuseOtherOptions({
  untracked,
  format,
  report,
  baseline,
  writeBaseline,
}: UntrackedOptions): void {
  if (!untracked)
    throw new CannotRun(
      '--write and --dry-run go with --untracked.',
      'Add --untracked, or leave them out.',
    );
  if (format !== 'text' && format !== 'json')
    throw new CannotRun(
      `--untracked cannot be printed as ${format}.`,
      'It takes --format text or json.',
    );
  if (report ?? baseline ?? writeBaseline)
    throw new CannotRun(
      '--untracked lists words, not findings.',
      'Leave --report, --baseline and --write-baseline out.',
    );
}

function changesOf({ files }: CountedManual, { textOf }: Checked): readonly Change[] {
  return files.texts
    .map(({ path, text }) => ({ file: path, before: textOf(path), after: text }))
    .filter(({ before, after }) => before !== after);
}

function showAll(
  changes: readonly Change[],
  counted: CountedManual,
  tell: (text: string) => void,
): void {
  for (const { file, before, after } of changes)
    tell(createTwoFilesPatch(file, file, before, after, 'as it is', 'counted', { context: 1 }));
  tell(`${summary(counted)} would be written. With --write and without --dry-run they are.`);
}

/** False where a file was refused. */
async function writeAll(
  changes: readonly Change[],
  counted: CountedManual,
  { folder }: Checked,
  tell: (text: string) => void,
): Promise<boolean> {
  const refused = await writeCounted(folder, changes);
  for (const { file } of changes) {
    const why = refused.find((one) => one.file === file)?.why;
    if (why === undefined) tell(`${file} is written.`);
    else complain(`${file} is left as it is: ${why}.`);
  }
  if (refused.length === 0) tell(`${summary(counted)} written.`);
  const left = counted.left.length;
  if (left > 0)
    tell(
      `${left} ${left === 1 ? 'is' : 'are'} for you to decide: \`tallybolt inspect --untracked\` lists them.`,
    );
  tell('Read what was written, and run `tallybolt inspect`.');
  return refused.length === 0;
}

function summary({ directives, entries }: CountedManual): string {
  const words = `${directives} ${directives === 1 ? 'directive' : 'directives'}`;
  return entries === 0
    ? words
    : `${words} and ${entries} new ${entries === 1 ? 'entry' : 'entries'}`;
}
