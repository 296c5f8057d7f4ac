import type { Job } from './job.ts';
import { type Jobs, openJob } from './jobs.ts';

/** What there is to say about the open job before more is ticked: one sentence each. */
export function jobNotes(
  jobs: Jobs,
  now: { readonly revision: string | undefined; readonly variant: string | undefined },
  isKept: boolean,
): string[] {
  const job = openJob(jobs);
  return [
    ...(isKept
      ? []
      : [
          'This browser keeps nothing for this page: ticks and readings are gone when it is closed. Save the job card before.',
        ]),
    ...(job === undefined ? [] : notesOn(job, now)),
  ];
}

function notesOn(
  { revision, variant, lost }: Job,
  now: { readonly revision: string | undefined; readonly variant: string | undefined },
): string[] {
  const notes: string[] = [];
  if (revision !== now.revision)
    notes.push(
      `This job was begun with ${called(revision)}; the sheet is now ${called(now.revision)}.`,
    );
  if (lost.length > 0) {
    const steps = lost.length === 1 ? 'step' : 'steps';
    notes.push(
      `Of the earlier sheet, ${steps} ${listed(lost)} had marks and read otherwise now: the marks were taken out. See what the sheet asks for there, and mark it anew.`,
    );
  }
  if (variant !== undefined && variant !== now.variant)
    notes.push(`This job is for ${variant}; the sheet now shows ${now.variant ?? 'all machines'}.`);
  return notes;
}

const called = (revision: string | undefined): string =>
  revision === undefined ? 'no revision number' : `revision ${revision}`;

function listed(words: readonly string[]): string {
  const [last, ...others] = words.toReversed();
  return others.length === 0 ? (last ?? '') : `${others.toReversed().join(', ')} and ${last}`;
}
