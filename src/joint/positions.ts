import type { Pattern } from '../../schemas/catalogue.ts';

/** Where one bolt of a pattern sits. x runs to the right and y down; the longer side of the pattern is 1 long. */
export interface Position {
  /** Counted from 1: clockwise from the top or the top left, row by row, or as the catalogue lists them. */
  readonly number: number;
  readonly x: number;
  readonly y: number;
}

/** A pattern laid out: its bolts by number, in a box from 0 to `width` and from 0 to `height`, the longer of them 1. */
export interface Layout {
  readonly outline: 'circle' | 'rectangle';
  readonly width: number;
  readonly height: number;
  readonly positions: readonly Position[];
}

/**
 * A circle begins at the top and goes round clockwise. A rectangle begins at its top left corner and goes round
 * clockwise, the first number along the top. Rows are read like text, each in the middle over the next. Free positions
 * are given with x to the right and y up, as on a drawing, in any unit.
 */
export function layoutOf(pattern: Pattern): Layout {
  if ('circle' in pattern) {
    return { outline: 'circle', ...normalised(onCircle(pattern.circle), unitBox) };
  }
  return { outline: 'rectangle', ...normalised(pointsOf(pattern)) };
}

type Point = readonly [x: number, y: number];

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The whole circle, so that three bolts on it do not fill the box. */
const unitBox: Box = { left: -1, top: -1, right: 1, bottom: 1 };

function pointsOf(pattern: Exclude<Pattern, { circle: number }>): readonly Point[] {
  if ('rows' in pattern) return inRows(pattern.rows);
  if ('rectangle' in pattern) return aroundRectangle(...pattern.rectangle);
  return pattern.positions.map(([x, y]): Point => [x, -y]);
}

function onCircle(count: number): readonly Point[] {
  return Array.from({ length: count }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / count;
    return [Math.sin(turn), -Math.cos(turn)];
  });
}

function inRows(rows: readonly number[]): readonly Point[] {
  return rows.flatMap((count, y) =>
    Array.from({ length: count }, (_, i): Point => [i - (count - 1) / 2, y]),
  );
}

function aroundRectangle(along: number, across: number): readonly Point[] {
  const top = Array.from({ length: along }, (_, x): Point => [x, 0]);
  const right = Array.from({ length: across - 1 }, (_, i): Point => [along - 1, i + 1]);
  if (along === 1 || across === 1) return [...top, ...right];
  const bottom = Array.from({ length: along - 1 }, (_, i): Point => [along - 2 - i, across - 1]);
  const left = Array.from({ length: across - 2 }, (_, i): Point => [0, across - 2 - i]);
  return [...top, ...right, ...bottom, ...left];
}

function normalised(points: readonly Point[], box = boxAround(points)): Omit<Layout, 'outline'> {
  const { left, top, right, bottom } = box;
  const size = Math.max(right - left, bottom - top) || 1;
  const positions = points.map(([x, y], i) => ({
    number: i + 1,
    x: (x - left) / size,
    y: (y - top) / size,
  }));
  return { width: (right - left) / size, height: (bottom - top) / size, positions };
}

function boxAround(points: readonly Point[]): Box {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x);
    box.top = Math.min(box.top, y);
    box.right = Math.max(box.right, x);
    box.bottom = Math.max(box.bottom, y);
  }
  return box;
}
