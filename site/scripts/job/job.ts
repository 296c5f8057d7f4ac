/** A job on one sheet, as the device keeps it. Times are ISO 8601, local with offset. */
export interface Job {
  readonly id: string;
  /** Work order or whatever the technician calls it; may be empty. */
  readonly name: string;
  readonly technician: string;
  readonly started: string;
  readonly finished: string | undefined;
  /** Of the sheet, when the job began. */
  readonly revision: string | undefined;
  /** The machine for which the sheet was shown, in the manual's words. */
  readonly variant: string | undefined;
  /** By the key of the box. */
  readonly ticks: Readonly<Record<string, Tick>>;
  readonly readings: Readonly<Record<string, Reading>>;
  /** Key of the box that was marked last. */
  readonly last: string | undefined;
  /** Steps, by their old numbers, whose marks were lost since the sheet now asks for something else. */
  readonly lost: readonly string[];
}

export interface Tick {
  readonly at: string;
  /** Print of the step's words when it was ticked. */
  readonly print: string;
}

export interface Reading extends Tick {
  readonly value: string;
}

/** What the technician does at one box. */
export type Mark =
  | { readonly kind: 'tick'; readonly key: string; readonly print: string; readonly isSet: boolean }
  | {
      readonly kind: 'reading';
      readonly key: string;
      readonly print: string;
      readonly value: string;
    };

/** A job with one more mark, or one fewer. Whatever is marked opens a finished job again. */
export function marked(job: Job, mark: Mark, at: string): Job {
  const open = { ...job, finished: undefined, last: mark.key };
  const { key, print } = mark;
  if (mark.kind === 'tick')
    return { ...open, ticks: put(job.ticks, key, mark.isSet ? { at, print } : undefined) };
  const value = mark.value.trim();
  const reading = value === '' ? undefined : { at, print, value };
  return { ...open, readings: put(job.readings, key, reading) };
}

function put<Value>(
  all: Readonly<Record<string, Value>>,
  key: string,
  value: Value | undefined,
): Readonly<Record<string, Value>> {
  const { [key]: _old, ...others } = all;
  return value === undefined ? others : { ...others, [key]: value };
}
