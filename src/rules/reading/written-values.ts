import type { Place } from '../../../schemas/finding.ts';
import { allActions, allSteps, type LinkedProcedure } from '../../link/index.ts';
import type { UnitKind } from '../../quantity/index.ts';
import type { Written } from '../../syntax/index.ts';

/** A value in an attribute of a directive; `expected` is what it must measure, where that is certain. */
export interface WrittenValue {
  readonly text: string;
  readonly place: Place;
  readonly what: string;
  readonly expected: UnitKind | undefined;
}

/** The values that a procedure gives in attributes, in order of reading within their sort. */
export function* writtenValues({ procedure }: LinkedProcedure): Generator<WrittenValue> {
  for (const { verb, value, amount, angle } of allActions(procedure)) {
    const isTightening = verb === 'torque' || verb === 'tighten';
    const isFluid = verb === 'drain' || verb === 'fill';
    if (value !== undefined)
      yield written(value, `the value of ${verb}`, isTightening ? 'torque' : undefined);
    if (amount !== undefined)
      yield written(amount, `the amount of ${verb}`, isFluid ? 'volume' : undefined);
    if (angle !== undefined) yield written(angle, 'the angle of the extension', 'angle');
  }
  for (const { time, wait } of allSteps(procedure)) {
    if (time !== undefined) yield written(time, 'the time of the step', 'time');
    if (wait !== undefined) yield written(wait, 'the wait of the step', 'time');
  }
}

function written(
  { text, place }: Written,
  what: string,
  expected: UnitKind | undefined,
): WrittenValue {
  return { text, place, what, expected };
}
