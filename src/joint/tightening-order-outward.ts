import type { Position } from './positions.ts';

/**
 * From the centre of the bolts outward, crosswise. Bolts at the same distance from the centre make a ring; in it they
 * follow in pairs, the second of a pair as far as may be from the first, the next pair as far as may be from those
 * already tight. Ties go to the bolt farther from the one before, then to the lower number. (General engineering
 * practice; no published list.)
 */
export function outwardOrder(positions: readonly Position[]): readonly Position[] {
  const done: Position[] = [];
  for (const ring of ringsOf(positions)) takeCrosswise(ring, done);
  return done;
}

/** Differences in distance that are no more than rounding, as a share of the whole. */
const slack = 1e-9;

function ringsOf(positions: readonly Position[]): readonly (readonly Position[])[] {
  const centre = {
    x: mean(positions.map(({ x }) => x)),
    y: mean(positions.map(({ y }) => y)),
  };
  const byDistance = positions
    .map((position) => ({ position, away: apart(position, centre) }))
    .sort((a, b) => a.away - b.away || a.position.number - b.position.number);
  const rings: Position[][] = [];
  let last = -Infinity;
  for (const { position, away } of byDistance) {
    if (away - last > slack) rings.push([]);
    rings.at(-1)?.push(position);
    last = away;
  }
  return rings.map((ring) => ring.sort((a, b) => a.number - b.number));
}

function takeCrosswise(ring: readonly Position[], done: Position[]): void {
  const left = new Set(ring);
  /** Of each bolt left, how near the nearest tightened one of its ring is. */
  const room = new Map(ring.map((one) => [one, Infinity]));
  for (let isSecond = false; left.size > 0; isSecond = !isSecond) {
    const last = done.at(-1);
    const fromLast = (one: Position): number => (last === undefined ? 0 : apart(one, last));
    const inRing = (one: Position): number => room.get(one) ?? 0;
    const next = isSecond ? best(left, [fromLast]) : best(left, [inRing, fromLast]);
    if (next === undefined) return;
    left.delete(next);
    done.push(next);
    for (const one of left) room.set(one, Math.min(inRing(one), apart(one, next)));
  }
}

/** The one with the most of the first measure; among equals with the most of the next, else the first. */
function best(
  among: Iterable<Position>,
  measures: readonly ((one: Position) => number)[],
): Position | undefined {
  let found: Position | undefined;
  for (const one of among) if (found === undefined || isMore(one, found, measures)) found = one;
  return found;
}

function isMore(
  one: Position,
  other: Position,
  measures: readonly ((one: Position) => number)[],
): boolean {
  for (const measure of measures) {
    const [mine, its] = [measure(one), measure(other)];
    if (mine === its) continue;
    if (Math.abs(mine - its) > slack) return mine > its;
  }
  return false;
}

const apart = (a: Omit<Position, 'number'>, b: Omit<Position, 'number'>): number =>
  Math.hypot(a.x - b.x, a.y - b.y);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
