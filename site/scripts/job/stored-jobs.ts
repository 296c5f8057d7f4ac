import { jsonIn } from '../../../src/source/json-in.ts';
import type { Job, Reading, Tick } from './job.ts';
import { type Jobs, noJobs, shown } from './jobs.ts';

/** The form of what is stored; another form is not read. */
const form = 1;

export function asStored({ open, kept }: Jobs): string {
  return JSON.stringify({ form, open, kept });
}

/** Reads what `asStored` wrote. Jobs that are not whole are left out: the store is anybody's to write in. */
export function fromStored(text: string | null): Jobs {
  const stored = record(jsonIn(text ?? ''));
  if (stored.form !== form || !Array.isArray(stored.kept)) return noJobs;
  const kept = stored.kept.flatMap((job: unknown) => jobOf(record(job)));
  return shown({ open: undefined, kept }, words(stored.open));
}

function jobOf(from: Fields): Job[] {
  const { id, started } = from;
  if (typeof id !== 'string' || typeof started !== 'string') return [];
  return [
    {
      id,
      started,
      name: words(from.name) ?? '',
      technician: words(from.technician) ?? '',
      finished: words(from.finished),
      revision: words(from.revision),
      variant: words(from.variant),
      last: words(from.last),
      lost: Array.isArray(from.lost) ? from.lost.flatMap((step) => words(step) ?? []) : [],
      ticks: each(from.ticks, tickOf),
      readings: each(from.readings, (fields) => {
        const tick = tickOf(fields);
        const value = words(fields.value);
        return tick && value !== undefined ? ({ ...tick, value } satisfies Reading) : undefined;
      }),
    },
  ];
}

function tickOf({ at, print }: Fields): Tick | undefined {
  return typeof at === 'string' && typeof print === 'string' ? { at, print } : undefined;
}

function each<Value>(
  from: unknown,
  read: (fields: Fields) => Value | undefined,
): Record<string, Value> {
  const values = Object.entries(record(from)).flatMap(([key, fields]) => {
    const value = read(record(fields));
    return value === undefined ? [] : [[key, value] as const];
  });
  return Object.fromEntries(values);
}

type Fields = Readonly<Record<string, unknown>>;

function record(value: unknown): Fields {
  return typeof value === 'object' && value !== null ? { ...value } : {};
}

function words(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}
