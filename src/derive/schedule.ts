/** A step as the clock sees it, in minutes: somebody works at it, and after that it has to wait. */
export interface Job {
  /** How long it keeps the crew. */
  readonly busy: number;
  /** From its start until what depends on it can begin; not less than `busy`. */
  readonly elapsed: number;
}

/** When the crew is done, and when everything is, in minutes from the start. */
export type Schedule = Job;

/** True where one job cannot begin before another, written earlier, is over. Asked with their indexes. */
export type MustFollow = (later: number, earlier: number) => boolean;

/**
 * A way to do jobs with one crew, which works at one of them at a time and never breaks off. Each begins
 * when the crew is free and the jobs that it must follow are over. Two ways are tried, and the shorter
 * counts: strictly in the order of writing, and with a job that is not ready passed by the next one that
 * is. So the result is an upper bound on the shortest way, which to find is far more work; it is never
 * longer than all jobs one after the other, and never shorter than the work or than any chain of jobs.
 */
export function schedule(jobs: readonly Job[], mustFollow: MustFollow): Schedule {
  const written = inOrder(jobs, mustFollow);
  const work = jobs.reduce((sum, { busy }) => sum + busy, 0);
  // Nothing is shorter than the work, nor than a single wait at the end of it.
  if (written.elapsed <= work || written.busy <= work) return written;
  const passing = passingWaits(jobs, mustFollow);
  return passing.elapsed < written.elapsed ? passing : written;
}

/** A job that lasts when the crew has left it. */
interface Waiting {
  readonly index: number;
  readonly over: number;
}

function inOrder(jobs: readonly Job[], mustFollow: MustFollow): Schedule {
  let free = 0;
  let end = 0;
  let waiting: Waiting[] = [];
  jobs.forEach((job, index) => {
    const start = waiting.reduce(
      (time, { index: earlier, over }) => (over > time && mustFollow(index, earlier) ? over : time),
      free,
    );
    free = start + job.busy;
    end = Math.max(end, start + job.elapsed);
    waiting = [...waiting, { index, over: start + job.elapsed }].filter(({ over }) => over > free);
  });
  return { busy: free, elapsed: Math.max(free, end) };
}

function passingWaits(jobs: readonly Job[], mustFollow: MustFollow): Schedule {
  const open = jobs.map((_, index) => index);
  let now = 0;
  let end = 0;
  let waiting: Waiting[] = [];
  while (open.length > 0) {
    waiting = waiting.filter(({ over }) => over > now);
    const isHeldUp = (index: number): boolean =>
      waiting.some((job) => job.index < index && mustFollow(index, job.index)) ||
      open.some((earlier) => earlier < index && mustFollow(index, earlier));
    const place = open.findIndex((index) => !isHeldUp(index));
    const [index] = place < 0 ? [] : open.splice(place, 1);
    const job = index === undefined ? undefined : jobs[index];
    if (index === undefined || job === undefined) {
      now = Math.min(...waiting.map(({ over }) => over));
      continue;
    }
    waiting.push({ index, over: now + job.elapsed });
    end = Math.max(end, now + job.elapsed);
    now += job.busy;
  }
  return { busy: now, elapsed: Math.max(now, end) };
}
