import type { Proposal } from '../../schemas/untracked.ts';
import { applyEdits, inspect } from '../report/index.ts';
import type { ManualFiles } from '../source/index.ts';
import { untrackedReport } from './untracked-report.ts';

/** A manual with all directives and entries written in that are clear. */
export interface CountedManual {
  readonly files: ManualFiles;
  /** How many were written. */
  readonly directives: number;
  readonly entries: number;
  /** What is for the writer to decide; places are those of the written files. */
  readonly left: readonly Proposal[];
}

/** An entry that is written lets more words be understood; after so many rounds nothing new comes. */
const mostRounds = 5;

/** Writes what `untrackedReport` can write, and again for what an entry written before makes clear. */
export function countedManual(files: ManualFiles): CountedManual {
  let now = files;
  let directives = 0;
  let entries = 0;
  for (let round = 1; ; round++) {
    const texts = new Map(now.texts.map(({ path, text }) => [path, text]));
    const { linked } = inspect(now, '');
    const report = untrackedReport(linked, (file) => texts.get(file) ?? '');
    const edits = [...report.additions, ...report.proposals.flatMap(({ edit }) => edit ?? [])];
    const left = report.proposals.filter(({ edit }) => edit === undefined);
    if (edits.length === 0 || round > mostRounds) return { files: now, directives, entries, left };
    directives += report.proposals.length - left.length;
    entries += report.entries.filter(({ isWhole }) => isWhole).length;
    now = {
      ...now,
      texts: now.texts.map(({ path, text }) => {
        const own = edits.filter(({ file }) => file === path);
        return { path, text: applyEdits(text, own) };
      }),
    };
  }
}
