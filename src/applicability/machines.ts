import type { Diagrams } from './diagrams.ts';
import type { VariantSet } from './variant-set.ts';

/** How many combinations of the first `levels` attributes are in a set that decides on no other. */
export function countMachines(diagrams: Diagrams, set: VariantSet, levels: number): bigint {
  const below: bigint[] = [1n];
  for (let level = levels - 1; level >= 0; level -= 1) {
    below.unshift(BigInt(diagrams.width(level)) * (below[0] ?? 1n));
  }
  const combinations = (from: number) => below[Math.min(from, levels)] ?? 1n;
  const known = new Map<VariantSet, bigint>([
    [diagrams.none, 0n],
    [diagrams.full, 1n],
  ]);
  for (const node of diagrams.nodesUpwards(set)) {
    let sum = 0n;
    for (const child of node.children) {
      sum += ((known.get(child) ?? 0n) * combinations(node.level + 1)) / combinations(child.level);
    }
    known.set(node, sum);
  }
  return ((known.get(set) ?? 0n) * combinations(0)) / combinations(set.level);
}

/** The first combination in a set that is not empty: the index of a value for each level the set decides on. */
export function firstMachine(diagrams: Diagrams, set: VariantSet): ReadonlyMap<number, number> {
  const values = new Map<number, number>();
  let node = set;
  while (node !== diagrams.full) {
    const value = firstOpen(diagrams, node);
    values.set(node.level, value);
    node = diagrams.child(node, node.level, value);
  }
  return values;
}

/**
 * Orders two sets that have nothing in common by their first combinations, so by nothing that depends
 * on what was built before. Neither may be empty.
 */
export function compareByFirstMachine(diagrams: Diagrams, a: VariantSet, b: VariantSet): number {
  let [left, right] = [a, b];
  while (left !== diagrams.full || right !== diagrams.full) {
    const level = Math.min(left.level, right.level);
    const leftValue = left.level === level ? firstOpen(diagrams, left) : 0;
    const rightValue = right.level === level ? firstOpen(diagrams, right) : 0;
    if (leftValue !== rightValue) return leftValue - rightValue;
    left = diagrams.child(left, level, leftValue);
    right = diagrams.child(right, level, rightValue);
  }
  return 0;
}

function firstOpen(diagrams: Diagrams, node: VariantSet): number {
  const value = node.children.findIndex((child) => child !== diagrams.none);
  if (value < 0) throw new RangeError('an empty set of machines has no first one');
  return value;
}
