import type { Job } from './job.ts';
import { type Jobs, openJob } from './jobs.ts';
import { shortTime } from './local-time.ts';
import type { Progress } from './progress.ts';

type Act = 'card' | 'print' | 'finish' | 'fresh' | 'reset';

/** What the bar asks for. */
export interface BarWishes extends Readonly<Record<Act, () => void>> {
  named(words: { readonly name: string; readonly technician: string }): void;
  open(id: string): void;
  drop(job: Job): void;
}

/** The bar above the steps: whose job it is, how far it is, and what can be done with it. */
export class JobBar {
  readonly #bar: HTMLElement;
  readonly #wishes: BarWishes;

  constructor(bar: HTMLElement, wishes: BarWishes) {
    this.#bar = bar;
    this.#wishes = wishes;
    bar.querySelector('.who')?.addEventListener('input', () => wishes.named(this.words()));
    for (const button of bar.querySelectorAll<HTMLButtonElement>('.acts button'))
      button.addEventListener('click', () => {
        const act = acts.find((name) => name === button.name);
        if (act !== undefined) wishes[act]();
      });
    bar.inert = false;
  }

  /** What stands in the fields, also before a job begins. */
  words(): { name: string; technician: string } {
    const [name, technician] = this.#fields().map(({ value }) => value.trim());
    return { name: name ?? '', technician: technician ?? '' };
  }

  /** Puts the words of a job into the fields. */
  write({ name, technician }: { readonly name: string; readonly technician: string }): void {
    const [first, second] = this.#fields();
    if (first && first.value.trim() !== name) first.value = name;
    if (second && second.value.trim() !== technician) second.value = technician;
  }

  show(
    jobs: Jobs,
    { done, all, next, passedOver }: Progress,
    notes: readonly string[],
    now: string,
    describe: (job: Job) => string,
  ): void {
    const job = openJob(jobs);
    const passed = passedOver === 0 ? '' : `, ${passedOver} passed over`;
    const steps = `${done} of ${all} ${all === 1 ? 'step' : 'steps'} done${passed}`;
    this.#say(
      '.count',
      job === undefined ? 'Begins with the first tick' : `${timesOf(job, now)} · ${steps}`,
    );
    this.#say('.notes', notes.join(' '));
    this.#say('.many', String(jobs.kept.length));
    const link = this.#bar.querySelector<HTMLAnchorElement>('.next');
    if (link !== null) {
      const isDue = job !== undefined && next !== undefined;
      link.textContent = isDue ? `Continue at step ${next.number}` : '';
      link.href = `#step-${next?.step ?? ''}`;
      link.hidden = !isDue;
    }
    for (const button of this.#bar.querySelectorAll<HTMLButtonElement>('.acts button'))
      button.disabled =
        job === undefined || (button.name === 'finish' && job.finished !== undefined);
    this.#list(jobs, describe);
  }

  #list(jobs: Jobs, describe: (job: Job) => string): void {
    const rows = jobs.kept.toReversed().map((job) => {
      const row = document.createElement('li');
      const words = document.createElement('span');
      words.textContent = describe(job);
      row.append(words);
      if (job.id === jobs.open) row.setAttribute('aria-current', 'true');
      else row.append(button('Open', job, () => this.#wishes.open(job.id)));
      row.append(button('Delete', job, () => this.#wishes.drop(job)));
      return row;
    });
    this.#bar.querySelector('.kept ul')?.replaceChildren(...rows);
  }

  #fields(): HTMLInputElement[] {
    return [...this.#bar.querySelectorAll<HTMLInputElement>('.who input')];
  }

  #say(where: string, words: string): void {
    const element = this.#bar.querySelector(where);
    if (element !== null && element.textContent !== words) element.textContent = words;
  }
}

const acts: readonly Act[] = ['card', 'print', 'finish', 'fresh', 'reset'];

/** "Started 12:03", with the end once there is one. */
export function timesOf({ started, finished }: Job, now: string): string {
  const end = finished === undefined ? '' : `, finished ${shortTime(finished, now)}`;
  return `Started ${shortTime(started, now)}${end}`;
}

/** What a job is called where it has no name. */
export const called = ({ name }: Job): string => name || 'Job without a name';

function button(words: string, job: Job, act: () => void): HTMLButtonElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.textContent = words;
  element.setAttribute('aria-label', `${words} ${called(job)}`);
  element.addEventListener('click', act);
  return element;
}
