import { resolve } from 'node:path';
import type { Redline } from '../../schemas/redline.ts';
import {
  makeRedline,
  type Revision,
  readRevision,
  redlineAsMarkdown,
  redlineAsPage,
  redlineAsText,
} from '../redline/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import { gitCommitOf } from './git-commit.ts';
import { type GitPlace, gitPlaceOf } from './git-place.ts';
import { readManualAt } from './read-manual-at.ts';
import { readManualFiles } from './read-manual-files.ts';
import type { RedlineFormat } from './redline-format.ts';
import { pageStyles } from './redline-styles.ts';
import { complain, paintFor, say, widthOf } from './terminal.ts';
import { today } from './today.ts';
import { version } from './version.ts';
import { writeOut } from './write-out.ts';

export interface RedlineOptions {
  /** The later revision; the working folder when undefined. */
  readonly until?: string;
  readonly format: RedlineFormat;
  /** File to write to; standard output when undefined. */
  readonly to?: string;
}

/** Tells what of the meaning of a manual changed since a revision. 0 nothing, 1 something. */
export async function redlineCommand(
  revision: string,
  folder: string,
  options: RedlineOptions,
): Promise<ExitCode> {
  const wanted = resolve(folder);
  // A folder that is not there is told before git is asked for it.
  const working = options.until === undefined ? await readManualFiles(wanted) : undefined;
  const place = await gitPlaceOf(wanted);
  const read = (files: ManualFiles, side: Revision['side']): Revision =>
    readRevision(files, side, { version, today: today() });
  const older = await gitCommitOf(revision, place);
  const newer = options.until === undefined ? undefined : await gitCommitOf(options.until, place);
  const before = await readManualAt(older.commit, place);
  const after = working ?? (newer && (await readManualAt(newer.commit, place)));
  if (after === undefined) throw withoutManual(options.until ?? '', place);
  if (before === undefined) {
    complain(
      `In ${revision} there is no manual in ${named(place)}, so that everything in it is new.`,
    );
  }
  const redline = makeRedline(read(before ?? nothing, older.side), read(after, newer?.side ?? {}), {
    name: 'tallybolt',
    version,
  });
  warnOfBroken(redline);
  await tell(redline, options, { folder: wanted, files: after });
  return redline.changes.length > 0 ? 1 : 0;
}

const nothing: ManualFiles = { texts: [], unreadable: [], others: [] };

const named = ({ path }: GitPlace): string => (path === '' ? 'the top folder' : path);

function withoutManual(revision: string, place: GitPlace): CannotRun {
  return new CannotRun(
    `In ${revision} there is no manual in ${named(place)}: it has no manual.yaml there.`,
    'Name the folder of the manual, and a later revision that has it.',
  );
}

/** What cannot be read is missing, so that it looks as if it had been taken out. */
function warnOfBroken({ findings }: Redline): void {
  const rules = [
    'yaml-broken',
    'yaml-shape',
    'front-matter-missing',
    'file-unreadable',
    'too-large',
  ];
  const broken = findings.new.filter(({ rule }) => rules.includes(rule));
  const files = [...new Set(broken.map(({ file }) => file))];
  if (files.length === 0) return;
  complain(
    `Parts of ${files.join(', ')} cannot be read, and count as taken out here. Run \`tallybolt inspect\` to see why.`,
  );
}

async function tell(
  redline: Redline,
  { format, to }: RedlineOptions,
  manual: { readonly folder: string; readonly files: ManualFiles },
): Promise<void> {
  if (to !== undefined) {
    await writeOut(to, await inFormat(redline, format), manual);
    say(`Written to ${to}.`);
  } else if (format === 'text') {
    say(redlineAsText(redline, paintFor(process.stdout), widthOf(process.stdout)));
  } else say(await inFormat(redline, format));
}

async function inFormat(redline: Redline, format: RedlineFormat): Promise<string> {
  switch (format) {
    case 'text':
      return redlineAsText(redline);
    case 'markdown':
      return redlineAsMarkdown(redline);
    case 'json':
      return `${JSON.stringify(redline, undefined, 2)}\n`;
    case 'page':
      return redlineAsPage(redline, await pageStyles());
  }
}
