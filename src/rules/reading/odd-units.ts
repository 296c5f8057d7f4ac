import type { Place } from '../../../schemas/finding.ts';
import type { ManualModel } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import {
  kindOf,
  mainUnit,
  type Quantity,
  sameFamily,
  sameQuantity,
  type UnitId,
  type UnitKind,
} from '../../quantity/index.ts';
import { quantitiesInProse } from './quantity-problems.ts';

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
  const values: InProse[] = [];
  for (const { text, found } of quantitiesInProse(one)) {
    const { quantity, start, end } = found;
    if (quantity === undefined) continue;
    const last = values.at(-1);
    const isBracketed = /\(\s*$/.test(text.text.slice(0, start));
    values.push({
      quantity,
      place: text.placeOf(start, end),
      isRepeat: isBracketed && last !== undefined && sameQuantity(last.quantity, quantity),
    });
  }
  return values;
}
