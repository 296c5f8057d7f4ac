import type { Place } from '../../../schemas/finding.ts';
import type { ManualModel } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import {
  findPairs,
  kindOf,
  mainUnit,
  type Quantity,
  sameFamily,
  type UnitId,
  type UnitKind,
} from '../../quantity/index.ts';
import { onceFor } from './once-for.ts';
import { quantitiesInProse } from './quantity-problems.ts';
import type { RunningText } from './running-text.ts';

/** A value in prose whose unit is not one of those that the manual uses. */
export interface OddUnit {
  readonly place: Place;
  readonly unit: UnitId;
  readonly kind: UnitKind;
  readonly usual: readonly UnitId[];
}

interface InProse {
  readonly quantity: Quantity;
  readonly place: Place;
  /** True where it repeats the value before it, in brackets and in another unit. */
  readonly isRepeat: boolean;
}

/**
 * A kind whose units the manual names must keep to them. Of any other kind, a procedure must keep to one unit;
 * where it does not, what is not in the usual units is odd.
 */
export function oddUnitsInProse(
  one: LinkedProcedure,
  { policy, settings }: ManualModel,
): OddUnit[] {
  const all = valuesOf(one);
  return all.flatMap(({ quantity, place }): OddUnit[] => {
    const kind = kindOf(quantity);
    const usual = policy[kind].filter((unit): unit is UnitId => unit !== 'as written');
    const unit = mainUnit(quantity);
    if (usual.length !== policy[kind].length || usual.some((known) => sameFamily(known, unit)))
      return [];
    if (!Object.hasOwn(settings.units, kind) && !isMixed(all, kind)) return [];
    return [{ place, unit, kind, usual }];
  });
}

function isMixed(all: readonly InProse[], kind: UnitKind): boolean {
  const units = all.flatMap(({ quantity, isRepeat }) =>
    kindOf(quantity) === kind && !isRepeat ? [mainUnit(quantity)] : [],
  );
  const [first, ...rest] = units;
  return first !== undefined && rest.some((unit) => !sameFamily(first, unit));
}

function valuesOf(one: LinkedProcedure): InProse[] {
  return quantitiesInProse(one).flatMap(({ text, found }): InProse[] => {
    const { quantity, start, end } = found;
    if (quantity === undefined) return [];
    return [{ quantity, place: text.placeOf(start, end), isRepeat: repeatsIn(text).has(start) }];
  });
}

/** Where the second values of the pairs of a text begin, whether they agree or not. */
const repeatsIn: (text: RunningText) => ReadonlySet<number> = onceFor(
  ({ text }) => new Set(findPairs(text).map(({ second }) => second.start)),
);
