import { cheapestCover } from './cheapest-cover.ts';
import type { Cover, Cube } from './cube.ts';
import { compareCubes, cubeSet } from './cube.ts';
import type { Diagrams } from './diagrams.ts';
import { irredundantCover } from './irredundant-cover.ts';
import { primeCubes } from './prime-cubes.ts';
import { effortFor } from './search-effort.ts';
import type { VariantSet } from './variant-set.ts';

/** More primes than this are not searched for the shortest cover. */
const PRIME_LIMIT = 60;
/** A cover of more cubes than this is of no use to a reader. */
const CUBE_LIMIT = 40;

/** More attributes than this are not searched: depth is then no danger. */
const LEVEL_LIMIT = 200;
/** Nor is a set of more attributes than this freed of those that do not matter. */
const IDLE_LIMIT = 1000;
/** What freeing it may cost, in nodes: it makes all that follows cheaper. */
const IDLE_NODES = 1_000_000;

/**
 * The shortest union of cubes that holds all of `on` and nothing of `off`, which have nothing in common;
 * in the order of the manual. Exact while the primes are few, else short but perhaps not the shortest;
 * undefined if it would be too long to read, or to find.
 */
export function shortestCover(
  diagrams: Diagrams,
  on: VariantSet,
  off: VariantSet,
): Cover | undefined {
  if (levelsOf(diagrams, on, off).length > IDLE_LIMIT) return undefined;
  const given = { on, off };
  const cover = exact(diagrams, given) ?? shorter(diagrams, given);
  return cover?.toSorted(compareCubes);
}

/** What is to be told, and what it is to be told from. */
interface Task {
  readonly on: VariantSet;
  readonly off: VariantSet;
}

/** A cover of what is left once attributes that do not matter are out of the way. */
function shorter(diagrams: Diagrams, given: Task): Cover | undefined {
  const task = withoutIdleLevels(diagrams, given);
  if (task === undefined) return undefined;
  if (levelsOf(diagrams, task.on, task.off).length > LEVEL_LIMIT) return undefined;
  const upper = diagrams.minus(diagrams.full, task.off);
  const isSame = task.on === given.on && task.off === given.off;
  return (
    (isSame ? undefined : exact(diagrams, task)) ??
    irredundantCover(diagrams, task.on, upper, CUBE_LIMIT)
  );
}

function exact(diagrams: Diagrams, { on, off }: Task): Cover | undefined {
  if (levelsOf(diagrams, on, off).length > LEVEL_LIMIT) return undefined;
  const effort = effortFor(diagrams, [on, off]);
  const primes = primeCubes(diagrams, diagrams.minus(diagrams.full, off), PRIME_LIMIT, effort);
  if (primes === undefined) return undefined;
  const useful = (cube: Cube) => diagrams.and(cubeSet(diagrams, cube), on) !== diagrams.none;
  return cheapestCover(diagrams, primes.filter(useful).sort(compareCubes), on, effort);
}

/** Forgets, from the last, each attribute without which the two sets can still be told apart. */
function withoutIdleLevels(diagrams: Diagrams, task: Task): Task | undefined {
  const effort = effortFor(diagrams, [task.on, task.off], IDLE_NODES);
  let near = task;
  for (const level of levelsOf(diagrams, task.on, task.off).toReversed()) {
    if (!effort.spend(3)) return undefined;
    const on = diagrams.forget(near.on, level);
    const off = diagrams.forget(near.off, level);
    if (diagrams.and(on, off) === diagrams.none) near = { on, off };
  }
  return near;
}

function levelsOf(diagrams: Diagrams, on: VariantSet, off: VariantSet): readonly number[] {
  const levels = new Set([...diagrams.levelsOf(on), ...diagrams.levelsOf(off)]);
  return [...levels].sort((a, b) => a - b);
}
