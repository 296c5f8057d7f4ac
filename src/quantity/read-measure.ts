import { afterSpace, matchAt } from './match-at.ts';
import type { QuantityProblem, Stretch } from './problem.ts';
import { type NumberReading, numberStart, readNumber } from './read-number.ts';
import type { UnitReader, UnitReading } from './read-unit.ts';
import type { UnitId } from './unit.ts';

/** The parts of a measure as found in the text, before anything is made of them. */
export type MeasureParts = Stretch & {
  readonly first: NumberReading;
  readonly second?: NumberReading;
  readonly join?: 'tolerance' | 'range';
  readonly limit?: 'max' | 'min';
  readonly unit?: UnitId;
  /** The tolerance is a percentage of the amount. */
  readonly byShare: boolean;
  readonly problems: readonly QuantityProblem[];
};

/** Reads `[max] number [unit] [± or .. number [unit]] [max]` from this place; undefined when no number is there. */
export function readMeasure(
  text: string,
  at: number,
  readUnit: UnitReader,
): MeasureParts | undefined {
  const before = limitBefore(text, at);
  const first = readNumber(text, before?.end ?? afterSpace(text, at));
  if (!first) return undefined;
  const unit1 = readUnit(text, afterSpace(text, first.end));
  const join = joinAt(text, unit1?.end ?? first.end);
  const second = join && readNumber(text, join.end);
  const unit2 = second && readUnit(text, afterSpace(text, second.end));
  const byShare = join?.is === 'tolerance' && isShare(unit2) && !isShare(unit1);
  const unit3 = byShare && !unit1 ? readUnit(text, afterSpace(text, unit2?.end ?? 0)) : undefined;
  const units = unitsOf({ unit1, unit2, unit3, byShare });
  const measureEnd = (unit3 ?? unit2 ?? second ?? unit1 ?? first).end;
  const after = before ? undefined : limitAfter(text, measureEnd);
  return {
    start: before?.start ?? first.start,
    end: after?.end ?? measureEnd,
    first,
    second,
    join: join?.is,
    limit: before?.limit ?? after?.limit,
    unit: units.unit,
    byShare: byShare && units.unit !== '%',
    problems: [
      ...[unit1, unit2, unit3, first, second].flatMap((part) => part?.problem ?? []),
      ...(units.problem ? [units.problem] : []),
      ...(units.isNamed ? [] : [missingUnit(second ?? first)]),
    ],
  };
}

/** Words that make a limit of the number after them, as the source of a regular expression. */
export const limitWords =
  '(?:max(?:imum)?\\.?(?:\\s+of)?|min(?:imum)?\\.?(?:\\s+of)?|at (?:most|least)|n(?:ot|o) (?:more|less) than|≤|≥|<=|>=)';

const limitPattern = new RegExp(`(${limitWords})\\s*(?=${numberStart})`, 'iy');
const joinPattern = new RegExp(
  `\\s*(?:(±|\\+/?[-−])|\\.{2,3}|…|[–—−-]|to(?=\\s))\\s*(?=${numberStart})`,
  'iy',
);

function limitBefore(text: string, at: number) {
  const start = afterSpace(text, at);
  const match = matchAt(limitPattern, text, start);
  if (!match?.[1]) return undefined;
  return { start, end: start + match[0].length, limit: limitNamed(match[1]) };
}

function limitAfter(text: string, at: number) {
  const match = matchAt(/\s*(max|min)(?:imum)?\b\.?/iy, text, at);
  if (!match?.[1]) return undefined;
  return { end: at + match[0].length, limit: limitNamed(match[1]) };
}

function limitNamed(words: string): 'max' | 'min' {
  return /^(?:max|at most|n(?:ot|o) more|≤|<=)/i.test(words) ? 'max' : 'min';
}

function joinAt(text: string, at: number) {
  const match = matchAt(joinPattern, text, at);
  if (!match) return undefined;
  const is: 'tolerance' | 'range' = match[1] === undefined ? 'range' : 'tolerance';
  return { is, end: at + match[0].length };
}

function isShare(unit: UnitReading | undefined): boolean {
  return unit?.unit === '%';
}

type Found = {
  unit1: UnitReading | undefined;
  unit2: UnitReading | undefined;
  unit3: UnitReading | undefined;
  byShare: boolean;
};

function unitsOf({ unit1, unit2, unit3, byShare }: Found) {
  if (byShare) {
    const main = unit1 ?? unit3 ?? unit2;
    return { unit: main?.unit, isNamed: main !== undefined };
  }
  const [one, two] = [unit1?.unit, unit2?.unit];
  const unit = two ?? (unit2 ? undefined : one);
  const isNamed = unit1 !== undefined || unit2 !== undefined;
  if (!one || !two || !unit2 || one === two) return { unit, isNamed };
  const problem: QuantityProblem = {
    code: 'two-units',
    start: unit2.start,
    end: unit2.end,
    first: one,
    second: two,
  };
  return { isNamed, problem };
}

function missingUnit(number: NumberReading): QuantityProblem {
  const { start, end, written } = number;
  return { code: 'unit-missing', start, end, number: written };
}
