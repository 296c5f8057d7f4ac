import type { Spot } from './layered-layout.ts';

/** A line through the middles between its bends. */
export function curve(points: readonly Spot[]): string {
  const [first, ...others] = points;
  if (first === undefined) return '';
  const bends = others.map((point, i) => {
    const next = others[i + 1];
    if (next === undefined) return `L${at(point)}`;
    const end = i + 2 === others.length ? next : middleOf(point, next);
    return `Q${at(point)} ${at(end)}`;
  });
  return `M${at(first)}${bends.slice(0, Math.max(1, others.length - 1)).join('')}`;
}

const middleOf = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** A black triangle at the end of a line. */
export function arrowhead(points: readonly Spot[]): string {
  const [before, tip] = points.slice(-2);
  if (before === undefined || tip === undefined) return '';
  const length = Math.hypot(tip.x - before.x, tip.y - before.y) || 1;
  const [dx, dy] = [(tip.x - before.x) / length, (tip.y - before.y) / length];
  const side = (turn: number): Spot => ({
    x: tip.x - 8 * dx + turn * 3.5 * dy,
    y: tip.y - 8 * dy - turn * 3.5 * dx,
  });
  return `M${at(side(1))}L${at(tip)}L${at(side(-1))}Z`;
}

const at = ({ x, y }: Spot): string => `${pictureNumber(x)} ${pictureNumber(y)}`;

/** A number of a picture, to half a pixel. */
export const pictureNumber = (value: number): string => String(Math.round(value * 2) / 2);
