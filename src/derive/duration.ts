import { convert, parseQuantity } from '../quantity/index.ts';
import { type MustFollow, schedule } from './schedule.ts';

/** How long work takes, in minutes. */
export interface Duration {
  /** The times of the steps, one after the other. */
  readonly work: number;
  /** The waits, one after the other. */
  readonly waits: number;
  /** When the crew is done, with other work in the waits as far as it may be moved there. */
  readonly busy: number;
  /** When the last wait is over too. */
  readonly elapsed: number;
  /** False where a part of the work has no time. */
  readonly isWhole: boolean;
}

export const noTime: Duration = { work: 0, waits: 0, busy: 0, elapsed: 0, isWhole: true };

/** Pieces of work together, each held up by those that it must follow. */
export function together(parts: readonly Duration[], mustFollow: MustFollow): Duration {
  const total = (of: (part: Duration) => number) => parts.reduce((sum, part) => sum + of(part), 0);
  return {
    work: total(({ work }) => work),
    waits: total(({ waits }) => waits),
    ...schedule(parts, mustFollow),
    isWhole: parts.every(({ isWhole }) => isWhole),
  };
}

/** Of ways through the work the longest, in each respect. */
export function longest(ways: readonly Duration[]): Duration {
  const most = (of: (way: Duration) => number) => Math.max(0, ...ways.map(of));
  return {
    work: most(({ work }) => work),
    waits: most(({ waits }) => waits),
    busy: most(({ busy }) => busy),
    elapsed: most(({ elapsed }) => elapsed),
    isWhole: ways.every(({ isWhole }) => isWhole),
  };
}

/** Minutes of a written time, of a range its end; undefined where it is no time. */
export function minutesOf(written: string): number | undefined {
  const parsed = parseQuantity(written).value;
  const value = parsed && convert(parsed, 'min').value;
  if (value === undefined || value.form === 'torque-angle') return undefined;
  return value.form === 'range' ? value.high.value : value.amount.value;
}

/** "45 min", "2 h 5 min"; undefined for no time at all. Part of a minute counts as a whole one. */
export function minutesText(minutes: number): string | undefined {
  const whole = Math.ceil(minutes - 1e-9);
  if (whole <= 0) return undefined;
  const hours = whole < 60 ? 0 : Math.floor(whole / 60);
  const rest = whole - hours * 60;
  return [
    ...(hours > 0 ? [`${hours}\u00a0h`] : []),
    ...(rest > 0 ? [`${rest}\u00a0min`] : []),
  ].join(' ');
}
