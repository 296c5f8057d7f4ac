import type { Place, Related } from '../../../schemas/finding.ts';
import { placeOf } from '../../source/index.ts';

export function related(place: Place, label: string): Related {
  return { ...placeOf(place), label };
}

export const samePlace = (a: Place, b: Place): boolean =>
  a.file === b.file && a.start.offset === b.start.offset && a.end.offset === b.end.offset;

/** Second places in order, each once, and never the first place again. */
export function without(place: Place, all: readonly Related[]): Related[] {
  return all.filter(
    (one, i) =>
      !samePlace(one, place) &&
      all.findIndex((other) => samePlace(one, other) && one.label === other.label) === i,
  );
}
