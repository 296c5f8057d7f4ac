import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Report } from '../../schemas/report.ts';
import {
  type Joined,
  type JoinFault,
  joinShares,
  type NamedShare,
  type Selection,
  selectFindings,
  shareFrom,
} from '../report/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { CheckedReport } from './check-folder.ts';
import { compareWithBaseline } from './compare-with-baseline.ts';
import type { ExitCode } from './exit-code.ts';
import { reasonOf } from './reason-of.ts';
import { ruleCalled } from './rule-called.ts';
import { type Telling, tellReport } from './tell-report.ts';
import { today } from './today.ts';
import { version } from './version.ts';

export interface MergeOptions extends Selection, Telling {
  /** File of the findings that an old manual is known to have. */
  readonly baseline: string | undefined;
}

/** Joins the shares of a manual in files, and tells what `inspect` tells of the whole. */
export async function mergeCommand(
  paths: readonly [string, ...string[]],
  options: MergeOptions,
): Promise<ExitCode> {
  for (const id of options.only) ruleCalled(id);
  const [first, ...rest] = paths;
  const shares: [NamedShare, ...NamedShare[]] = [await shareIn(first)];
  for (const path of rest) shares.push(await shareIn(path));
  const answer = joinShares(shares, version, { today: today() });
  if ('faults' in answer) throw refusal(answer.faults, shares[0].share.share.of);
  const { value } = answer;
  return tellReport(
    selectFindings(await marked(value.report, options), options),
    asChecked(value),
    options,
  );
}

async function shareIn(name: string): Promise<NamedShare> {
  let text: string;
  try {
    text = await readFile(name, 'utf8');
  } catch (error) {
    const reason = reasonOf(error);
    throw new CannotRun(
      reason === 'it is gone' ? `There is no file ${name}.` : `${name} cannot be read: ${reason}.`,
      'Name the files into which `inspect --share` was printed.',
    );
  }
  const share = shareFrom(jsonIn(text));
  if (share !== undefined) return { name, share };
  throw new CannotRun(
    text.trim() === ''
      ? `${name} is empty.`
      : `${name} is not, or not whole, what \`inspect --share\` prints.`,
    'Check that share again, and see that it ends with exit code 0.',
  );
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const marked = async (report: Report, { baseline }: MergeOptions): Promise<Report> =>
  baseline === undefined ? report : compareWithBaseline(report, baseline);

/** As if the manual had been checked here, in the folder where it lay. */
function asChecked({ report, procedures, levels, folder, texts }: Joined): CheckedReport {
  const byPath = new Map(texts.map(({ path, text }) => [path, text]));
  return {
    report,
    procedures,
    levels,
    looked: 0,
    folder: resolve(folder),
    files: { texts, unreadable: [], others: [] },
    textOf: (path) => byPath.get(path) ?? '',
  };
}

function refusal(faults: readonly JoinFault[], of: number): CannotRun {
  const lines = faults.map((fault) => sentence(fault, of));
  return new CannotRun(
    lines.length === 1 ? lines.join('') : `These shares cannot be joined:\n  ${lines.join('\n  ')}`,
    'Give `merge` each share of one state of one manual once, all checked by this version of Tallybolt.',
  );
}

function sentence(fault: JoinFault, of: number): string {
  switch (fault.kind) {
    case 'other-version':
      return `${fault.name} was checked by version ${fault.version}, and this is ${version}.`;
    case 'foreign':
      return `${fault.name} is of another manual than ${fault.first}, or of another state of it.`;
    case 'elsewhere':
      return `${fault.name} was checked from another folder than ${fault.first}: the files have other paths.`;
    case 'other-count':
      return `${fault.name} is one share of ${fault.of}, and ${fault.first} one of ${of}.`;
    case 'doubled':
      return `Share ${fault.number}/${of} is there ${fault.names.length} times: ${fault.names.join(', ')}.`;
    case 'missing': {
      const named = fault.numbers.slice(0, most).map((number) => `${number}/${of}`);
      const more = fault.numbers.length - named.length;
      const rest = more > 0 ? ` and ${more} more` : '';
      return `${fault.numbers.length === 1 ? 'Share' : 'Shares'} ${named.join(', ')}${rest} ${fault.numbers.length === 1 ? 'is' : 'are'} missing.`;
    }
  }
}

/** So many missing shares are told by number. */
const most = 20;
