import { Awake } from './awake.ts';
import { carryOver } from './carry-over.ts';
import type { Job, Mark } from './job.ts';
import { called, JobBar, timesOf } from './job-bar.ts';
import { cardName, jobCard, type SheetFacts } from './job-card.ts';
import { jobNotes } from './job-notes.ts';
import { JobStore } from './job-store.ts';
import {
  type Beginning,
  changed,
  described,
  finished,
  type Jobs,
  openJob,
  reset,
  shown,
  withMark,
  without,
} from './jobs.ts';
import { localTime } from './local-time.ts';
import { sayOnPaper } from './paper-cells.ts';
import { progress } from './progress.ts';
import { saveFile } from './save-file.ts';
import { SheetBoxes } from './sheet-boxes.ts';

/** Keeps the ticks and readings of a sheet on the device, by job. To be called before the page is changed. */
export function keepJobs(page: Document): void {
  const bar = page.querySelector<HTMLElement>('.job[data-job]');
  if (bar === null) return;
  const facts = factsOf(bar);
  const boxes = new SheetBoxes(page);
  const store = new JobStore(`tallybolt jobs: ${bar.dataset.keep ?? ''}: ${facts.id}`);
  const awake = new Awake();

  const change = (by: (jobs: Jobs) => Jobs): void => {
    store.write(by(store.read()));
    show();
  };
  const view = new JobBar(bar, {
    named: (words) => change((jobs) => described(jobs, words)),
    card: () => {
      const job = openJob(store.read());
      if (job === undefined) return;
      const card = jobCard(job, facts, boxes.steps(), boxes.readings(), now());
      saveFile(cardName(card), `${JSON.stringify(card, undefined, 2)}\n`);
    },
    print: () => print(),
    finish: () => {
      const job = openJob(store.read());
      if (job === undefined) return;
      const { done, all } = progress(job, boxes.steps());
      if (
        done === all ||
        confirm(`${done} of ${all} steps are ticked. Finish the job all the same?`)
      )
        change((jobs) => finished(jobs, now()));
    },
    fresh: () => {
      blank();
      change((jobs) => shown(jobs, undefined));
    },
    reset: () => {
      if (confirm('Clear all ticks and readings of this job?'))
        change((jobs) => reset(jobs, facts.revision));
    },
    open: (id) => change((jobs) => carried(shown(jobs, id))),
    drop: (job) => {
      if (!confirm(`Delete ${called(job)} with its ticks and readings from this device?`)) return;
      if (openJob(store.read())?.id === job.id) blank();
      change((jobs) => without(jobs, job.id));
    },
  });
  const blank = (): void => view.write({ name: '', technician: view.words().technician });
  const carried = (jobs: Jobs): Jobs => changed(jobs, (job) => carryOver(job, boxes.all));

  function show(): void {
    const jobs = store.read();
    const job = openJob(jobs);
    const rows = boxes.steps();
    const time = now();
    const far = (one: Pick<Job, 'ticks' | 'last'>) => progress(one, rows);
    boxes.fill(job ?? { ticks: {}, readings: {} });
    if (job !== undefined) view.write(job);
    const stand = far(job ?? nothing);
    const notes = jobNotes(jobs, { revision: facts.revision, variant: variant() }, store.isKept);
    view.show(jobs, stand, notes, time, (one) => {
      const { done, all } = far(one);
      const who = one.technician === '' ? [] : [one.technician];
      return [called(one), ...who, timesOf(one, time), `${done} of ${all} steps`].join(' · ');
    });
    sayOnPaper(page, job, stand, time);
    awake.want(job !== undefined && job.finished === undefined);
  }

  function take(event: Event): void {
    const box = boxes.boxOf(event.target);
    if (box === undefined) return;
    const { key, print, field, kind } = box;
    const mark: Mark =
      kind === 'tick'
        ? { kind, key, print, isSet: field.checked }
        : { kind, key, print, value: field.value };
    change((jobs) => withMark(jobs, mark, now(), beginning()));
  }

  const chosen = (): string | undefined => page.documentElement.dataset.machine;
  const unchosen = chosen();
  const variant = (): string | undefined => (chosen() === unchosen ? undefined : chosen());
  const beginning = (): Beginning => ({
    ...view.words(),
    id: Date.now().toString(36),
    revision: facts.revision,
    variant: variant(),
  });

  page.addEventListener('input', take);
  store.onOthers(show);
  addEventListener('pageshow', show);
  new MutationObserver(show).observe(page.documentElement, { attributeFilter: ['data-machine'] });
  const before = store.read();
  const after = carried(before);
  if (openJob(after) !== openJob(before)) store.write(after);
  show();
}

const nothing = { ticks: {}, last: undefined };

function now(): string {
  const date = new Date();
  return localTime(date.getTime(), -date.getTimezoneOffset());
}

function factsOf({ dataset }: HTMLElement): SheetFacts {
  return {
    id: dataset.job ?? '',
    manual: dataset.manual ?? '',
    title: dataset.title ?? '',
    document: dataset.document ?? '',
    revision: dataset.revision,
    isDraft: dataset.draft !== undefined,
  };
}
