/** A point of the picture, in its drawn units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where the numbers stand around a picture, which has its left upper corner at 0,0. */
export interface CalloutPlaces {
  /** Middle of the circle of each call-out, in their order. */
  readonly circles: readonly Point[];
  /** The picture with its numbers, and room to touch each of them. */
  readonly box: Point & { readonly width: number; readonly height: number };
}

/** Between the middles of two numbers, so that a finger meets one of them: 24 px where the whole is 314 px wide. */
export const pitch = 58;
/** From the edge of the picture to the middle of a number. */
const reach = 30;
/** No number stands nearer than this to a corner, where it would come close to those of the next edge. */
const inset = 12;
/** Room at an edge with numbers, and at one without. */
const [withNumbers, without] = [reach + pitch / 2, inset + 8];

type Side = 'left' | 'right' | 'top' | 'bottom';
const sides: readonly Side[] = ['left', 'right', 'top', 'bottom'];

/**
 * Puts each number outside the picture, level with what it shows, at the edge that is nearest; then exchanges numbers
 * until no exchange makes the leaders shorter. Two leaders of one point each never cross then.
 */
export function placeCallouts(
  { width, height }: { readonly width: number; readonly height: number },
  callouts: readonly (readonly Point[])[],
): CalloutPlaces {
  const middles = callouts.map(middleOf);
  const bySide = onSides(middles, width, height);
  const circles: Point[] = middles.slice();
  for (const side of sides) {
    const along = isUpright(side) ? 'y' : 'x';
    const here = bySide[side].toSorted(
      (a, b) => at(middles, a)[along] - at(middles, b)[along] || a - b,
    );
    const places = spread(
      here.map((i) => at(middles, i)[along]),
      isUpright(side) ? height : width,
    );
    for (const [n, i] of here.entries()) circles[i] = onEdge(side, places[n] ?? 0, width, height);
  }
  shorten(circles, callouts);
  const room = (side: Side): number => (bySide[side].length > 0 ? withNumbers : without);
  const box = {
    x: -room('left'),
    y: -room('top'),
    width: room('left') + width + room('right'),
    height: room('top') + height + room('bottom'),
  };
  return { circles, box };
}

/** Which call-outs stand at which edge: the nearest one that has room. */
function onSides(middles: readonly Point[], width: number, height: number): Record<Side, number[]> {
  const found: Record<Side, number[]> = { left: [], right: [], top: [], bottom: [] };
  const wishes = middles.map(({ x, y }, i) => {
    const far: Record<Side, number> = { left: x, right: width - x, top: y, bottom: height - y };
    const best = sides.toSorted((a, b) => far[a] - far[b]);
    return { i, best, least: Math.min(...Object.values(far)) };
  });
  for (const { i, best } of wishes.toSorted((a, b) => a.least - b.least || a.i - b.i)) {
    const hasRoom = (side: Side): boolean => {
      const length = (isUpright(side) ? height : width) - 2 * inset;
      return found[side].length < Math.max(1, Math.floor(length / pitch) + 1);
    };
    found[best.find(hasRoom) ?? best[0] ?? 'top'].push(i);
  }
  return found;
}

/**
 * Places along an edge, as near to the wanted ones (in rising order) as their distance lets them be: those that would
 * meet share the way. Closer than the distance only where there are too many.
 */
function spread(wanted: readonly number[], length: number): number[] {
  const span = Math.max(0, length - 2 * inset);
  const step = Math.min(pitch, wanted.length > 1 ? span / (wanted.length - 1) : span);
  const groups: { sum: number; count: number }[] = [];
  for (const [i, place] of wanted.entries()) {
    let group = { sum: place - i * step, count: 1 };
    for (let last = groups.at(-1); last && mean(last) > mean(group); last = groups.at(-1)) {
      group = { sum: group.sum + last.sum, count: group.count + last.count };
      groups.pop();
    }
    groups.push(group);
  }
  const most = inset + span - (wanted.length - 1) * step;
  return groups
    .flatMap((group) => Array.from({ length: group.count }, () => mean(group)))
    .map((start, i) => Math.max(inset, Math.min(most, start)) + i * step);
}

const mean = ({ sum, count }: { sum: number; count: number }): number => sum / count;

/** Exchanges two places as long as that makes the leaders shorter. */
function shorten(circles: Point[], callouts: readonly (readonly Point[])[]): void {
  const cost = (circle: Point, i: number): number =>
    (callouts[i] ?? []).reduce(
      (sum, point) => sum + Math.hypot(point.x - circle.x, point.y - circle.y),
      0,
    );
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < circles.length; i++) {
      for (let j = i + 1; j < circles.length; j++) {
        const [a, b] = [at(circles, i), at(circles, j)];
        if (cost(b, i) + cost(a, j) >= cost(a, i) + cost(b, j) - leastGain) continue;
        [circles[i], circles[j]] = [b, a];
        changed = true;
      }
    }
  }
}

/** Rounding must not keep the exchange going for ever. */
const leastGain = 1e-6;

function onEdge(side: Side, along: number, width: number, height: number): Point {
  switch (side) {
    case 'left':
      return { x: -reach, y: along };
    case 'right':
      return { x: width + reach, y: along };
    case 'top':
      return { x: along, y: -reach };
    case 'bottom':
      return { x: along, y: height + reach };
  }
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right';

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  const count = Math.max(1, points.length);
  return { x: sum.x / count, y: sum.y / count };
}

const at = (points: readonly Point[], i: number): Point => points[i] ?? { x: 0, y: 0 };
