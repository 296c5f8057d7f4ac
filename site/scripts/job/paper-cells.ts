import type { Job } from './job.ts';
import { timesOf } from './job-bar.ts';
import type { Progress } from './progress.ts';

/** Puts the job into the title block, where paper shows it. Takes it away where there is none. */
export function sayOnPaper(
  page: Document,
  job: Job | undefined,
  { done, all }: Progress,
  now: string,
): void {
  const block = page.querySelector('.title-block dl');
  for (const cell of block?.querySelectorAll('.of-job') ?? []) cell.remove();
  if (job === undefined) return;
  const cells = [
    ['Job', job.name],
    ['Technician', job.technician],
    ['Time', timesOf(job, now)],
    ['Steps done', `${done} of ${all}`],
  ] as const;
  for (const [label, value] of cells) {
    if (value === '') continue;
    const cell = page.createElement('div');
    cell.className = 'of-job';
    const term = page.createElement('dt');
    term.textContent = label;
    const words = page.createElement('dd');
    words.textContent = value;
    cell.append(term, words);
    block?.append(cell);
  }
}
