import type { Diagrams } from './diagrams.ts';
import type { VariantSet } from './variant-set.ts';

/** One test of a cube: the indexes, rising, of the values that pass. Never all of them, never none. */
export interface Literal {
  readonly level: number;
  readonly values: readonly number[];
}

/** Tests that must all pass, at most one for each level, in the order of the levels. */
export type Cube = readonly Literal[];

/** The cubes whose union is the set to be told: the parts of an `any` condition. */
export type Cover = readonly Cube[];

export function cubeSet(diagrams: Diagrams, cube: Cube): VariantSet {
  return cube.reduceRight(
    (rest, { level, values }) => diagrams.literal(level, values, rest),
    diagrams.full,
  );
}

/**
 * How long something reads: first how many values are named, then how many alternatives there are, then
 * how many tests are negated.
 */
export interface Length {
  readonly names: number;
  readonly parts: number;
  readonly negated: number;
}

export const NOTHING: Length = { names: 0, parts: 0, negated: 0 };

/** A literal may name the values that pass or, if these are more, those that do not. */
export function namesPassing(diagrams: Diagrams, { level, values }: Literal): boolean {
  return values.length <= diagrams.width(level) - values.length;
}

export function cubeLength(diagrams: Diagrams, cube: Cube): Length {
  let names = 0;
  let negated = 0;
  for (const literal of cube) {
    const passing = namesPassing(diagrams, literal);
    const count = literal.values.length;
    names += passing ? count : diagrams.width(literal.level) - count;
    if (!passing) negated += 1;
  }
  return { names, parts: 1, negated };
}

export function coverLength(diagrams: Diagrams, cover: Cover): Length {
  return cover.reduce((sum, cube) => addLength(sum, cubeLength(diagrams, cube)), NOTHING);
}

export function addLength(a: Length, b: Length): Length {
  return {
    names: a.names + b.names,
    parts: a.parts + b.parts,
    negated: a.negated + b.negated,
  };
}

export function compareLength(a: Length, b: Length): number {
  return a.names - b.names || a.parts - b.parts || a.negated - b.negated;
}

/** A fixed order of cubes, by level and then by values: the order of the manual. */
export function compareCubes(a: Cube, b: Cube): number {
  for (const [index, left] of a.entries()) {
    const right = b[index];
    if (right === undefined) return 1;
    const order = left.level - right.level || compareValues(left.values, right.values);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

function compareValues(a: readonly number[], b: readonly number[]): number {
  for (const [index, left] of a.entries()) {
    const right = b[index];
    if (right === undefined) return 1;
    if (left !== right) return left - right;
  }
  return a.length - b.length;
}
