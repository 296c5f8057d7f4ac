import { type Job, type Mark, marked } from './job.ts';

/** The jobs of one sheet on this device. */
export interface Jobs {
  /** Id of the job that the sheet shows; undefined where it is blank. */
  readonly open: string | undefined;
  /** In the order in which they began. */
  readonly kept: readonly Job[];
}

/** What the sheet says of itself, and what was typed before the job began. */
export interface Beginning {
  readonly id: string;
  readonly name: string;
  readonly technician: string;
  readonly revision: string | undefined;
  readonly variant: string | undefined;
}

export const noJobs: Jobs = { open: undefined, kept: [] };

const blank = { finished: undefined, ticks: {}, readings: {}, last: undefined, lost: [] };

export function openJob({ open, kept }: Jobs): Job | undefined {
  return kept.find(({ id }) => id === open);
}

/** Marks a box in the open job; the first mark of a blank sheet begins a job. */
export function withMark(jobs: Jobs, mark: Mark, at: string, beginning: Beginning): Jobs {
  if (openJob(jobs) !== undefined)
    return changed(jobs, (job) => ({
      ...marked(job, mark, at),
      variant: job.variant ?? beginning.variant,
    }));
  if (mark.kind === 'tick' ? !mark.isSet : mark.value.trim() === '') return jobs;
  const job: Job = { ...beginning, ...blank, id: freeId(jobs, beginning.id), started: at };
  return { open: job.id, kept: [...jobs.kept, marked(job, mark, at)] };
}

/** The open job with other words about it: its name or number, and who does it. */
export function described(jobs: Jobs, words: Partial<Pick<Job, 'name' | 'technician'>>): Jobs {
  return changed(jobs, (job) => ({ ...job, ...words }));
}

/** The open job with nothing ticked and nothing read, on the sheet as it is now. */
export function reset(jobs: Jobs, revision: string | undefined): Jobs {
  return changed(jobs, (job) => ({ ...job, ...blank, revision }));
}

export function finished(jobs: Jobs, at: string): Jobs {
  return changed(jobs, (job) => ({ ...job, finished: at }));
}

/** Shows another job, or a blank sheet for a new one. */
export function shown(jobs: Jobs, id: string | undefined): Jobs {
  return { ...jobs, open: jobs.kept.some((job) => job.id === id) ? id : undefined };
}

export function without(jobs: Jobs, id: string): Jobs {
  return shown({ ...jobs, kept: jobs.kept.filter((job) => job.id !== id) }, jobs.open);
}

export function changed(jobs: Jobs, change: (job: Job) => Job): Jobs {
  return {
    ...jobs,
    kept: jobs.kept.map((job) => (job.id === jobs.open ? change(job) : job)),
  };
}

function freeId({ kept }: Jobs, wanted: string): string {
  const taken = new Set(kept.map(({ id }) => id));
  let id = wanted;
  for (let n = 2; taken.has(id); n += 1) id = `${wanted}-${n}`;
  return id;
}
