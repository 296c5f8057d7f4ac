import type { JobCard } from '../../../schemas/job-card.ts';
import { judge, type Limits } from '../judge.ts';
import type { Job, Tick } from './job.ts';
import { type Row, tickKey } from './progress.ts';

/** What a sheet tells of itself. */
export interface SheetFacts {
  readonly manual: string;
  readonly isDraft: boolean;
  readonly id: string;
  readonly title: string;
  readonly document: string;
  readonly revision: string | undefined;
}

export interface CardStep extends Row {
  readonly places: readonly string[];
}

/** A box for a reading; without a unit nothing is said of its limits. */
export interface CardReading extends Limits {
  readonly key: string;
  /** Number of its step as it is shown; undefined outside of steps. */
  readonly number: string | undefined;
  readonly what: string;
  readonly unit: string | undefined;
}

/** The card of a job: what was ticked and read, when, and what is still open. */
export function jobCard(
  job: Job,
  facts: SheetFacts,
  steps: readonly CardStep[],
  readings: readonly CardReading[],
  written: string,
): JobCard {
  const { manual, isDraft, id, title, document, revision } = facts;
  const { name, technician, started, finished, variant, lost } = job;
  return {
    manual: { title: manual, ...(isDraft ? { draft: true } : {}) },
    sheet: { id, title, document, ...given('revision', revision) },
    job: {
      name,
      technician,
      started,
      ...given('finished', finished),
      ...given('revision', job.revision),
      ...given('machine', variant),
      ...given('changedSince', lost.length > 0 ? [...lost] : undefined),
    },
    written,
    steps: steps.map(({ step, number, places }) => ({
      step: number,
      ...done(job.ticks[tickKey(step)]),
      ...given(
        'places',
        places.length > 0
          ? places.map((place) => ({ place, ...done(job.ticks[tickKey(step, place)]) }))
          : undefined,
      ),
    })),
    readings: readings.map((box) => readingLine(box, job)),
  };
}

function readingLine(box: CardReading, { readings }: Job): JobCard['readings'][number] {
  const { key, number, what, low, high, unit } = box;
  const { value, at } = readings[key] ?? {};
  const hasLimits = unit !== undefined;
  const { is } = judge(value ?? '', { low, high });
  return {
    ...given('step', number),
    what,
    ...given('value', value),
    ...given('at', at),
    ...given('low', low),
    ...given('high', high),
    ...given('unit', unit),
    verdict: value === undefined ? 'empty' : hasLimits ? is : 'no-limits',
  };
}

const done = (tick: Tick | undefined): { done?: string } => given('done', tick?.at);

/** A field of that name where there is a value. */
function given<Name extends string, Value>(
  name: Name,
  value: Value | undefined,
): { [name in Name]?: Value } {
  const field: { [name in Name]?: Value } = {};
  if (value !== undefined) field[name] = value;
  return field;
}

/** A file name for a card: letters and digits of what it is called, the rest as hyphens. */
export function cardName({ sheet, job }: JobCard): string {
  const words = ['job', job.name || job.started.slice(0, 16), sheet.document];
  return `${words
    .join(' ')
    .replace(/[^\p{L}\p{N}.]+/gu, '-')
    .replace(/^[-.]+|[-.]+$/g, '')}.json`;
}
