import { allSteps, blocksIn, type LinkedProcedure } from '../link/index.ts';
import { convert, parseQuantity } from '../quantity/index.ts';
import type { Block, Procedure, Step } from '../syntax/index.ts';
import type { Gathering } from './gather.ts';

/** How long a job takes. `isWhole` is false where a part of it has no time. */
export interface WorkTime {
  readonly minutes: number;
  readonly isWhole: boolean;
}

/** The times of the steps one after the other; of ways through the work the longest; of a range its end. */
export const workTime: Gathering<WorkTime> = {
  sum: (parts) => ({
    minutes: parts.reduce((sum, { minutes }) => sum + minutes, 0),
    isWhole: parts.every(({ isWhole }) => isWhole),
  }),
  choose: (ways) => ({
    minutes: Math.max(0, ...ways.map(({ minutes }) => minutes)),
    isWhole: ways.every(({ isWhole }) => isWhole),
  }),
  block: (block) => (block.type === 'reverse' ? { minutes: 0, isWhole: false } : undefined),
  step: (step, one) => {
    const minutes = step.time && minutesOf(step.time.text);
    if (minutes !== undefined) return { minutes, isWhole: true };
    return isTimedElsewhere(step, one) ? undefined : { minutes: 0, isWhole: false };
  },
};

/** "45 min", "2 h 5 min", "at least 20 min"; undefined for no time at all. Part of a minute counts as a whole one. */
export function timeText({ minutes, isWhole }: WorkTime): string | undefined {
  const whole = Math.ceil(minutes - 1e-9);
  if (whole <= 0) return undefined;
  const hours = whole < 60 ? 0 : Math.floor(whole / 60);
  const rest = whole - hours * 60;
  const parts = [
    ...(isWhole ? [] : ['at least']),
    ...(hours > 0 ? [`${hours}\u00a0h`] : []),
    ...(rest > 0 ? [`${rest}\u00a0min`] : []),
  ];
  return parts.join(' ');
}

/** True where the time of a step is that of the steps inside it, of the job that it performs, or of the step around it. */
function isTimedElsewhere(step: Step, one: LinkedProcedure): boolean {
  return hasWorkInside(step.blocks) || insideTimedSteps(one.procedure).has(step);
}

function hasWorkInside(blocks: readonly Block[]): boolean {
  return blocks.some(
    (block) =>
      block.type === 'steps' ||
      block.type === 'perform' ||
      block.type === 'reverse' ||
      hasWorkInside(blocksIn(block)),
  );
}

const insideTimed = new WeakMap<Procedure, ReadonlySet<Step>>();

function insideTimedSteps(procedure: Procedure): ReadonlySet<Step> {
  const known = insideTimed.get(procedure);
  if (known !== undefined) return known;
  const timed = [...allSteps(procedure)].filter(({ time }) => time !== undefined);
  const inside = new Set(timed.flatMap(({ blocks }) => [...stepsIn(blocks)]));
  insideTimed.set(procedure, inside);
  return inside;
}

function* stepsIn(blocks: readonly Block[]): Generator<Step> {
  for (const block of blocks) {
    if (block.type === 'steps') yield* block.steps;
    yield* stepsIn(blocksIn(block));
  }
}

function minutesOf(written: string): number | undefined {
  const parsed = parseQuantity(written).value;
  const value = parsed && convert(parsed, 'min').value;
  if (value === undefined || value.form === 'torque-angle') return undefined;
  return value.form === 'range' ? value.high.value : value.amount.value;
}
