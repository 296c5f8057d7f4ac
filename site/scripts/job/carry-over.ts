import type { Job, Tick } from './job.ts';
import { stepOf } from './progress.ts';

/** A box of the sheet: its key and the print of its step. */
export interface Box {
  readonly key: string;
  readonly print: string;
}

/**
 * Holds the marks of a job against the sheet. A mark stays where the step still has its words; it moves
 * along where the step has but another number; otherwise it is lost, since nobody knows that what was done
 * is what the sheet now asks for. The job itself where nothing moves.
 */
export function carryOver(job: Job, boxes: readonly Box[]): Job {
  const printAt = new Map(boxes.map(({ key, print }) => [key, print]));
  const home = (key: string, { print }: Tick): string | undefined =>
    printAt.get(key) === print ? key : elsewhere(key, print, boxes);
  const marks = [...Object.entries(job.ticks), ...Object.entries(job.readings)];
  if (marks.every(([key, mark]) => home(key, mark) === key)) return job;
  const lost = marks.flatMap(([key, mark]) =>
    home(key, mark) === undefined ? [stepOf(key) || nameOf(key).slice(1)] : [],
  );
  const last = marks.find(([key]) => key === job.last);
  return {
    ...job,
    ticks: rehoused(job.ticks, home),
    readings: rehoused(job.readings, home),
    last: last && home(...last),
    lost: [...new Set([...job.lost, ...lost])],
  };
}

/** The box with the same name at the only step that has these words. */
function elsewhere(key: string, print: string, boxes: readonly Box[]): string | undefined {
  const same = boxes.filter((box) => box.print === print && nameOf(box.key) === nameOf(key));
  return same.length === 1 ? same[0]?.key : undefined;
}

/** What follows the step's number in a key: the name of the box in its step. */
const nameOf = (key: string): string => key.slice(stepOf(key).length);

function rehoused<Mark extends Tick>(
  marks: Readonly<Record<string, Mark>>,
  home: (key: string, mark: Mark) => string | undefined,
): Record<string, Mark> {
  return Object.fromEntries(
    Object.entries(marks).flatMap(([key, mark]) => {
      const at = home(key, mark);
      return at === undefined ? [] : [[at, mark] as const];
    }),
  );
}
