import { exactStep, exactValue } from './amount.ts';
import { boundsOf } from './bounds.ts';
import { differenceIn, exactlyIn } from './exact-conversion.ts';
import type { Tolerance } from './quantity.ts';
import * as exact from './rational.ts';
import { allowance, finerUntil, firstPlace, stepIn, textAt } from './rounding-place.ts';
import type { UnitId } from './unit.ts';

export type RoundedTolerance = {
  readonly form: 'tolerance';
  readonly amount: string;
  readonly by: 'amount' | 'share';
  readonly tolerance: string;
};

/** The middle to the nearest, the tolerance down, so that the printed band lies inside the written one. */
export function roundedTolerance(measure: Tolerance, unit: UnitId): RoundedTolerance {
  const from = measure.unit;
  const nominal = exactlyIn(exactValue(measure.amount), from, unit);
  const { low, high } = boundsOf(measure);
  if (!low || !high || exact.compare(low.value, high.value) === 0) {
    const place = firstPlace(stepIn(measure.amount, from, unit), unit);
    const amount = textAt(nominal, place, 'half-even');
    return { form: 'tolerance', amount, by: 'amount', tolerance: '0' };
  }
  const bottom = exactlyIn(low.value, from, unit);
  const top = exactlyIn(high.value, from, unit);
  const step = measure.by === 'share' ? low.step : exactStep(measure.tolerance);
  const stepThere = differenceIn(step, from, unit);
  const mayMove = allowance(
    exact.larger(exact.absolute(bottom), exact.absolute(top)),
    stepThere,
    unit,
  );
  const bandAt = (place: number) => {
    const middle = exact.roundTo(nominal, place, 'half-even');
    const room = exact.smaller(exact.subtract(middle, bottom), exact.subtract(top, middle));
    const width = exact.roundTo(room, place, 'down');
    const lost = exact.larger(
      exact.subtract(exact.subtract(middle, width), bottom),
      exact.subtract(top, exact.add(middle, width)),
    );
    return { middle, width, isFine: width.n > 0n && exact.compare(lost, mayMove) <= 0 };
  };
  const finest = exact.smaller(stepThere, stepIn(measure.amount, from, unit));
  const place = finerUntil(firstPlace(finest, unit), (at) => bandAt(at).isFine);
  const { middle, width } = bandAt(place);
  return {
    form: 'tolerance',
    by: 'amount',
    amount: exact.decimalText(middle, place),
    tolerance: exact.decimalText(width, place),
  };
}
