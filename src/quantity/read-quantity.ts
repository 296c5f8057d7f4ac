import type { Amount } from './amount.ts';
import { boundsOf } from './bounds.ts';
import { matchAt } from './match-at.ts';
import { isOnlySpelling, type QuantityProblem, type Stretch } from './problem.ts';
import { isMeasureOf, kindOf, type Measure, type Quantity } from './quantity.ts';
import { compare, zero } from './rational.ts';
import { limitWords, type MeasureParts, readMeasure } from './read-measure.ts';
import { numberStart } from './read-number.ts';
import type { UnitReader } from './read-unit.ts';
import { kindOfUnit, type UnitId } from './unit.ts';
import { canBeNegative } from './unit-kind.ts';

export type QuantityReading = Stretch & {
  readonly quantity?: Quantity;
  readonly problems: readonly QuantityProblem[];
};

/** Reads one quantity of any form that begins at this place; undefined when no number does. */
export function readQuantity(
  text: string,
  at: number,
  readUnit: UnitReader,
): QuantityReading | undefined {
  const parts = readMeasure(text, at, readUnit);
  if (!parts) return undefined;
  const first = measureFrom(parts);
  const plus = matchAt(plusPattern, text, parts.end);
  const added = plus && readMeasure(text, parts.end + plus[0].length, readUnit);
  if (!added) return { start: parts.start, end: parts.end, ...first };
  return { start: parts.start, end: added.end, ...sum(parts, first, added) };
}

type Made<Q> = { readonly quantity?: Q; readonly problems: readonly QuantityProblem[] };

const plusPattern = new RegExp(`\\s*\\+\\s*(?=(?:${limitWords}\\s*)?${numberStart})`, 'iy');

function measureFrom(parts: MeasureParts): Made<Measure> {
  const measure = assembled(parts);
  const problems = [...parts.problems, ...formFaults(parts, measure)];
  return problems.every(isOnlySpelling) ? { quantity: measure, problems } : { problems };
}

function assembled(parts: MeasureParts): Measure | undefined {
  const { unit, join, limit } = parts;
  const amount = parts.first.amount;
  const other = parts.second?.amount;
  if (!unit || !amount) return undefined;
  if (join === undefined)
    return limit ? { form: 'limit', unit, limit, amount } : { form: 'single', unit, amount };
  if (!other) return undefined;
  if (join === 'range') return { form: 'range', unit, low: amount, high: other };
  const by = parts.byShare ? 'share' : 'amount';
  return { form: 'tolerance', unit, amount, by, tolerance: other };
}

function formFaults(parts: MeasureParts, measure: Measure | undefined): QuantityProblem[] {
  const { start, end, limit, join, unit, byShare } = parts;
  const faults: QuantityProblem[] = [];
  if (limit && join) faults.push({ code: 'limit-of-several', start, end, limit });
  if (measure?.form === 'range' && isReversed(measure.low, measure.high))
    faults.push({
      code: 'range-reversed',
      start,
      end,
      low: parts.first.written,
      high: parts.second?.written ?? '',
    });
  if (byShare && unit && kindOfUnit(unit) === 'temperature')
    faults.push({ code: 'share-of-temperature', start, end });
  else faults.push(...negativeFaults(parts, measure));
  return faults;
}

function isReversed(low: Amount, high: Amount): boolean {
  return low.value >= high.value;
}

function negativeFaults(parts: MeasureParts, measure: Measure | undefined): QuantityProblem[] {
  const { unit } = parts;
  if (!unit) return [];
  const kind = kindOfUnit(unit);
  const isSigned = canBeNegative(kind);
  const written = [parts.first, parts.second].filter(
    (number, index) =>
      number?.amount !== undefined &&
      number.amount.value < 0 &&
      (!isSigned || (index === 1 && parts.join === 'tolerance')),
  );
  const faults = written.flatMap((number): QuantityProblem[] =>
    number
      ? [{ code: 'negative', start: number.start, end: number.end, written: number.written, kind }]
      : [],
  );
  if (faults.length > 0 || isSigned || measure?.form !== 'tolerance') return faults;
  const low = boundsOf(measure).low;
  if (!low || compare(low.value, zero) >= 0) return [];
  const { start, end, first, second } = parts;
  return [{ code: 'negative', start, end, written: `${first.written} ± ${second?.written}`, kind }];
}

function sum(
  firstParts: MeasureParts,
  first: Made<Measure>,
  addedParts: MeasureParts,
): Made<Quantity> {
  const added = measureFrom(addedParts);
  const problems = [
    ...first.problems,
    ...added.problems,
    ...misplacedAngle(firstParts, addedParts),
    ...backwardAngle(addedParts, added.quantity),
  ];
  const [torque, angle] = [first.quantity, added.quantity];
  if (!torque || !angle || !problems.every(isOnlySpelling)) return { problems };
  if (!isMeasureOf(torque, 'torque') || !isMeasureOf(angle, 'angle')) return { problems };
  return { quantity: { form: 'torque-angle', torque, angle }, problems };
}

function misplacedAngle(first: MeasureParts, added: MeasureParts): QuantityProblem[] {
  const [one, two] = [kindOfPart(first.unit), kindOfPart(added.unit)];
  if (!one || !two || (one === 'torque' && two === 'angle')) return [];
  const { start, end } = added;
  return [{ code: 'angle-misplaced', start, end, first: one, second: two }];
}

/** An angle may be negative as a setting, never as a further turn. */
function backwardAngle(parts: MeasureParts, angle: Measure | undefined): QuantityProblem[] {
  if (!angle || kindOf(angle) !== 'angle') return [];
  const low = boundsOf(angle).low;
  if (!low || compare(low.value, zero) >= 0) return [];
  const { start, end, first } = parts;
  return [{ code: 'negative', start, end, written: first.written, kind: 'angle' }];
}

function kindOfPart(unit: UnitId | undefined) {
  return unit && kindOfUnit(unit);
}
