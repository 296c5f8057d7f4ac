import type { Cube } from './cube.ts';
import { cubeSet } from './cube.ts';
import type { Diagrams } from './diagrams.ts';
import type { Effort } from './search-effort.ts';
import type { VariantSet } from './variant-set.ts';

interface Prime {
  readonly cube: Cube;
  readonly set: VariantSet;
}

/**
 * Every cube within `upper` that no other cube within it contains: the prime implicants, with tests of
 * several values. Undefined if there are more than `limit` at some node, or the effort is used up.
 *
 * At each node a prime passes a group of values of the node's attribute. What it says about the later
 * attributes is prime for what the group's children have in common, so the meets of children are searched.
 */
export function primeCubes(
  diagrams: Diagrams,
  upper: VariantSet,
  limit: number,
  effort: Effort,
): readonly Cube[] | undefined {
  const known = new Map<VariantSet, readonly Prime[] | undefined>([
    [diagrams.none, []],
    [diagrams.full, [{ cube: [], set: diagrams.full }]],
  ]);
  const visit = (node: VariantSet): readonly Prime[] | undefined => {
    if (known.has(node)) return known.get(node);
    if (known.size > limit * 20) return undefined;
    const primes = primesAt(node);
    known.set(node, primes);
    return primes;
  };
  const primesAt = (node: VariantSet): readonly Prime[] | undefined => {
    const meets = meetsOf(diagrams, node.children, limit);
    if (meets === undefined) return undefined;
    const primes: Prime[] = [];
    for (const meet of meets) {
      const rests = visit(meet);
      if (rests === undefined) return undefined;
      const values = indexesWhere(node.children, (child) => diagrams.covers(child, meet));
      const others = node.children.filter((_, index) => !values.includes(index));
      if (!effort.spend(rests.length + 1)) return undefined;
      for (const rest of rests) {
        if (others.some((child) => diagrams.covers(child, rest.set))) continue;
        const cube =
          others.length === 0 ? rest.cube : [{ level: node.level, values }, ...rest.cube];
        primes.push({ cube, set: others.length === 0 ? rest.set : cubeSet(diagrams, cube) });
      }
      if (primes.length > limit) return undefined;
    }
    return primes;
  };
  return visit(upper)?.map((prime) => prime.cube);
}

/** What each group of the sets has in common, where that is not nothing. */
function meetsOf(
  diagrams: Diagrams,
  sets: readonly VariantSet[],
  limit: number,
): ReadonlySet<VariantSet> | undefined {
  const meets = new Set<VariantSet>();
  for (const set of new Set(sets)) {
    for (const meet of [diagrams.full, ...meets]) {
      const common = diagrams.and(set, meet);
      if (common !== diagrams.none) meets.add(common);
    }
    if (meets.size > limit) return undefined;
  }
  return meets;
}

function indexesWhere<T>(items: readonly T[], test: (item: T) => boolean): readonly number[] {
  return items.flatMap((item, index) => (test(item) ? [index] : []));
}
