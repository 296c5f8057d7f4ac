import type { Cover, Cube } from './cube.ts';
import { cubeSet } from './cube.ts';
import type { Diagrams } from './diagrams.ts';
import type { VariantSet } from './variant-set.ts';

interface Part {
  readonly cover: Cover;
  readonly set: VariantSet;
}

/**
 * A cover between `lower` and `upper` in which no cube can be left out, found without listing the primes:
 * Minato's and Morreale's irredundant sum of products, with groups of values in place of a variable and its
 * negation, then each cube widened as far as it goes. Undefined if it needs more than `limit` cubes.
 */
export function irredundantCover(
  diagrams: Diagrams,
  lower: VariantSet,
  upper: VariantSet,
  limit: number,
): Cover | undefined {
  const first = sumOfProducts(diagrams, lower, upper, limit);
  if (first === undefined) return undefined;
  const wide = first.map((cube) => widen(diagrams, cube, upper));
  return withoutSpare(diagrams, wide, lower);
}

function sumOfProducts(
  diagrams: Diagrams,
  lower: VariantSet,
  upper: VariantSet,
  limit: number,
): Cover | undefined {
  const known = new Map<string, Part>();
  let steps = 0;
  const visit = (low: VariantSet, high: VariantSet): Part | undefined => {
    if (low === diagrams.none) return { cover: [], set: diagrams.none };
    if (high === diagrams.full) return { cover: [[]], set: diagrams.full };
    const key = `${low.id},${high.id}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    steps += 1;
    if (steps > limit * 20) return undefined;
    const part = split(low, high);
    if (part === undefined || part.cover.length > limit) return undefined;
    known.set(key, part);
    return part;
  };
  const split = (low: VariantSet, high: VariantSet): Part | undefined => {
    const level = Math.min(low.level, high.level);
    const values = Array.from({ length: diagrams.width(level) }, (_, value) => ({
      value,
      low: diagrams.child(low, level, value),
      high: diagrams.child(high, level, value),
    }));
    const always = values.reduce((set, each) => diagrams.and(set, each.high), diagrams.full);
    const cover: Cube[] = [];
    let set = diagrams.none;
    let left = diagrams.none;
    for (const group of groupsOf(values)) {
      // Only what cannot be covered whatever the value is needs a test of this attribute.
      const inner = visit(diagrams.minus(group.low, always), group.high);
      if (inner === undefined) return undefined;
      const literal = { level, values: group.values };
      for (const cube of inner.cover) cover.push([literal, ...cube]);
      set = diagrams.or(set, diagrams.literal(level, group.values, inner.set));
      left = diagrams.or(left, diagrams.minus(group.low, inner.set));
    }
    const rest = visit(left, always);
    if (rest === undefined) return undefined;
    return { cover: [...cover, ...rest.cover], set: diagrams.or(set, rest.set) };
  };
  return visit(lower, upper)?.cover;
}

/** Values that lead to the same bounds share a test. */
function groupsOf(
  values: readonly {
    readonly value: number;
    readonly low: VariantSet;
    readonly high: VariantSet;
  }[],
): Iterable<{ readonly values: number[]; readonly low: VariantSet; readonly high: VariantSet }> {
  const groups = new Map<
    string,
    { readonly values: number[]; readonly low: VariantSet; readonly high: VariantSet }
  >();
  for (const { value, low, high } of values) {
    const key = `${low.id},${high.id}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { values: [value], low, high });
    else group.values.push(value);
  }
  return groups.values();
}

/** Drops each test that can go, the last first, then lets the others pass each further value that they can. */
function widen(diagrams: Diagrams, cube: Cube, upper: VariantSet): Cube {
  let wide = cube;
  const take = (wider: Cube): void => {
    if (diagrams.covers(upper, cubeSet(diagrams, wider))) wide = wider;
  };
  for (const { level } of cube.toReversed()) take(wide.filter((other) => other.level !== level));
  for (const { level } of wide) {
    for (let value = 0; value < diagrams.width(level); value += 1) {
      take(
        wide.map((other) =>
          other.level === level && !other.values.includes(value)
            ? { level, values: [...other.values, value].sort((a, b) => a - b) }
            : other,
        ),
      );
    }
  }
  return wide;
}

/** Leaves out, from the last, each cube that the others make up for. */
function withoutSpare(diagrams: Diagrams, cover: Cover, lower: VariantSet): Cover {
  const sets = cover.map((cube) => cubeSet(diagrams, cube));
  const before: VariantSet[] = [diagrams.none];
  for (const set of sets) before.push(diagrams.or(before.at(-1) ?? diagrams.none, set));
  const kept: Cube[] = [];
  let after = diagrams.none;
  for (const [fromEnd, cube] of cover.toReversed().entries()) {
    const index = cover.length - 1 - fromEnd;
    const others = diagrams.or(before[index] ?? diagrams.none, after);
    if (diagrams.covers(others, lower)) continue;
    kept.push(cube);
    after = diagrams.or(after, sets[index] ?? diagrams.none);
  }
  return kept.reverse();
}
