import type { Cover, Cube, Length } from './cube.ts';
import { addLength, compareLength, cubeLength, cubeSet, NOTHING } from './cube.ts';
import type { Diagrams } from './diagrams.ts';
import type { Effort } from './search-effort.ts';
import type { VariantSet } from './variant-set.ts';

/** Steps of the search after which the best cover found so far is taken. */
const STEP_LIMIT = 20_000;
const ROW_LIMIT = 200;

/** Indexes of cubes as bits. */
type Row = bigint;

interface Choice {
  readonly cubes: readonly number[];
  readonly length: Length;
}

/**
 * The shortest choice of cubes that covers all of `on`: branch and bound over the cubes, which must cover
 * it together. Of equally short choices the first in the order of the cubes. Undefined if `on` falls into
 * too many pieces to search.
 */
export function cheapestCover(
  diagrams: Diagrams,
  cubes: readonly Cube[],
  on: VariantSet,
  effort: Effort,
): Cover | undefined {
  const rows = rowsOf(diagrams, cubes, on, effort);
  if (rows === undefined) return undefined;
  const lengths = cubes.map((cube) => cubeLength(diagrams, cube));
  const choice = search(rows, lengths);
  return cubes.filter((_, index) => choice.cubes.includes(index));
}

/** The pieces of `on` that the cubes cut it into, each as the cubes that cover it; the hardest only. */
function rowsOf(
  diagrams: Diagrams,
  cubes: readonly Cube[],
  on: VariantSet,
  effort: Effort,
): readonly Row[] | undefined {
  let pieces: readonly { readonly set: VariantSet; readonly row: Row }[] = [{ set: on, row: 0n }];
  for (const [index, cube] of cubes.entries()) {
    const set = cubeSet(diagrams, cube);
    if (!effort.spend(pieces.length)) return undefined;
    pieces = pieces.flatMap((piece) => {
      const inside = diagrams.and(piece.set, set);
      if (inside === diagrams.none) return [piece];
      const covered = { set: inside, row: piece.row | (1n << BigInt(index)) };
      const outside = diagrams.minus(piece.set, set);
      return outside === diagrams.none ? [covered] : [{ set: outside, row: piece.row }, covered];
    });
    if (pieces.length > ROW_LIMIT) return undefined;
  }
  const rows = [...new Set(pieces.map((piece) => piece.row))].sort(
    (a, b) => bitCount(a) - bitCount(b) || (a < b ? -1 : 1),
  );
  const hardest: Row[] = [];
  for (const row of rows) if (!hardest.some((other) => (other & row) === other)) hardest.push(row);
  return hardest;
}

function search(rows: readonly Row[], lengths: readonly Length[]): Choice {
  const byLength = lengths
    .map((length, index) => ({ index, length }))
    .sort((a, b) => compareLength(a.length, b.length) || a.index - b.index);
  const lengthOf = (cube: number): Length => lengths[cube] ?? NOTHING;
  const candidates = (row: Row): readonly number[] =>
    byLength.flatMap(({ index }) => (has(row, index) ? [index] : []));

  /** Rows with no cube in common each need a cube of their own. */
  const leastFor = (left: readonly Row[]): Length => {
    let least = NOTHING;
    let used = 0n;
    for (const row of left) {
      if ((row & used) !== 0n) continue;
      used |= row;
      const cheapest = byLength.find(({ index }) => has(row, index));
      if (cheapest !== undefined) least = addLength(least, cheapest.length);
    }
    return least;
  };

  let steps = 0;
  let best = greedy(rows, lengths);
  const visit = (left: readonly Row[], chosen: Choice): void => {
    steps += 1;
    if (compareLength(addLength(chosen.length, leastFor(left)), best.length) >= 0) return;
    const [row] = left;
    if (row === undefined) {
      best = chosen;
      return;
    }
    for (const cube of candidates(row)) {
      if (steps > STEP_LIMIT) return;
      visit(
        left.filter((other) => !has(other, cube)),
        { cubes: [...chosen.cubes, cube], length: addLength(chosen.length, lengthOf(cube)) },
      );
    }
  };
  visit(rows, { cubes: [], length: NOTHING });
  return best;
}

/** Takes the cube that covers most rows a name, again and again. */
function greedy(rows: readonly Row[], lengths: readonly Length[]): Choice {
  let left = rows;
  let choice: Choice = { cubes: [], length: NOTHING };
  while (left.length > 0) {
    let best = { index: 0, length: NOTHING, worth: 0 };
    for (const [index, length] of lengths.entries()) {
      const worth = left.filter((row) => has(row, index)).length / Math.max(1, length.names);
      if (worth > best.worth) best = { index, length, worth };
    }
    if (best.worth === 0) throw new RangeError('the cubes do not cover the set');
    const { index, length } = best;
    choice = { cubes: [...choice.cubes, index], length: addLength(choice.length, length) };
    left = left.filter((row) => !has(row, index));
  }
  return choice;
}

function has(row: Row, cube: number): boolean {
  return ((row >> BigInt(cube)) & 1n) === 1n;
}

function bitCount(row: Row): number {
  let count = 0;
  for (let rest = row; rest !== 0n; rest &= rest - 1n) count += 1;
  return count;
}
