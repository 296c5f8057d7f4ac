import type { Job } from './job.ts';

/** A step of the sheet: its number where all machines are shown, by which it is known, and the one shown now. */
export interface Row {
  readonly step: string;
  readonly number: string;
  /** False of a step inside another one, which the sheet does not count. */
  readonly isTop: boolean;
}

export interface Progress {
  readonly done: number;
  readonly all: number;
  /** The step with which to go on; undefined where none is left. */
  readonly next: Row | undefined;
  /** How many steps before that one are not done. */
  readonly passedOver: number;
}

/**
 * How far a job is. It goes on with the first step that is not done after the one marked last, and after
 * the end of the sheet with the first one left out.
 *
 * @param rows in the order of the sheet; those of other machines left out
 */
export function progress(
  { ticks, last }: Pick<Job, 'ticks' | 'last'>,
  rows: readonly Row[],
): Progress {
  const isDone = ({ step }: Row): boolean => ticks[tickKey(step)] !== undefined;
  const top = rows.filter(({ isTop }) => isTop);
  const from = Math.max(
    0,
    rows.findIndex(({ step }) => last !== undefined && step === stepOf(last)),
  );
  const inTurn = [...rows.slice(from), ...rows.slice(0, from)];
  const next = inTurn.find((row) => !isDone(row));
  const before = next === undefined ? [] : rows.slice(0, rows.indexOf(next));
  return {
    done: top.filter(isDone).length,
    all: top.length,
    next,
    passedOver: before.filter(
      (row) => row.isTop && !isDone(row) && !next?.step.startsWith(`${row.step}.`),
    ).length,
  };
}

/** Key of the tick of a step, or of one of its places. */
export const tickKey = (step: string, place = ''): string => `${step}/${place}`;

/** The step of a key. */
export const stepOf = (key: string): string => key.slice(0, key.indexOf('/'));
