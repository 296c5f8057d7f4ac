import { operators } from './operators/index.ts';
import type { Reason } from './reasons.ts';
import type { Outcome, Trial } from './trial.ts';

/** The trials as Markdown: killed and made by operator and manual, then every survivor under its reason. */
export function tableOf(trials: readonly Trial[]): string {
  const all = trials.flatMap(({ outcomes }) => outcomes);
  const shortTitles = trials.map(({ title }) => title.split(',')[0] ?? title);
  const rows = operators.map(({ name }) => [
    name,
    ...trials.map(({ outcomes }) => score(of(outcomes, name))),
    score(of(all, name)),
  ]);
  const last = ['all', ...trials.map(({ outcomes }) => score(outcomes)), score(all)];
  return [
    '# What the check finds when a fault is put in',
    '',
    'Each operator puts one fault into a procedure that is clean, at every place where it can be put. A fault is',
    'found if the check then tells an error or a warning. Killed / made:',
    '',
    line(['operator', ...shortTitles, 'all']),
    line(['---', ...trials.map(() => '--:'), '--:']),
    ...[...rows, last].map(line),
    '',
    ...summary(all),
    '',
    ...survivors(all, 'same', 'Survivors that leave the machine as it is'),
    ...survivors(all, 'unseen', 'Survivors that change something, unseen'),
  ].join('\n');
}

function summary(all: readonly Outcome[]): string[] {
  const killed = all.filter(({ isKilled }) => isKilled).length;
  const same = all.filter(({ reason }) => reason?.kind === 'same').length;
  const share = ((100 * killed) / (all.length - same)).toFixed(1);
  return [
    `${all.length} faults, ${killed} found. ${same} leave the machine as it is. Of the ${all.length - same} others ${share} % are found.`,
  ];
}

function survivors(all: readonly Outcome[], kind: Reason['kind'], title: string): string[] {
  const byReason = new Map<string, Set<string>>();
  for (const { mutant, reason } of all) {
    if (reason?.kind !== kind) continue;
    const listed = byReason.get(reason.says) ?? new Set();
    byReason.set(
      reason.says,
      listed.add(`* ${mutant.operator}, ${mutant.procedure}: \`${clipped(mutant.words)}\``),
    );
  }
  const groups = [...byReason].flatMap(([says, listed]) => [`### ${says}`, '', ...listed, '']);
  return groups.length === 0 ? [] : [`## ${title}`, '', ...groups];
}

const of = (outcomes: readonly Outcome[], operator: string) =>
  outcomes.filter(({ mutant }) => mutant.operator === operator);

const score = (outcomes: readonly Outcome[]): string =>
  outcomes.length === 0
    ? ''
    : `${outcomes.filter(({ isKilled }) => isKilled).length} / ${outcomes.length}`;

const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const longest = 180;

/** Cut in the middle, so that what was changed at the end is still there. */
const clipped = (words: string): string =>
  words.length <= longest
    ? words
    : `${words.slice(0, longest / 2)} … ${words.slice(3 - longest / 2)}`;
