import type { Space, VariantSet } from '../applicability/index.ts';

/** So many are told apart that more would help no reader. */
const most = 32;

/**
 * Machines parted along some sets, so that each set holds for all machines of a part or for none. A set
 * that would make too many parts is left out; it may then hold for some machines of a part.
 */
export function machineParts(
  space: Space,
  under: VariantSet,
  sets: Iterable<VariantSet>,
): readonly VariantSet[] {
  let parts: readonly VariantSet[] = [under];
  for (const set of new Set(sets)) {
    const next = parts
      .flatMap((part) => [space.and(part, set), space.minus(part, set)])
      .filter((part) => part !== space.none);
    if (next.length > 0 && next.length <= most) parts = next;
  }
  return parts;
}
