import type { Element } from 'hast';
import { h, s } from 'hastscript';
import type { Position, TighteningOrder } from '../joint/index.ts';
import { pictureNumber } from './picture-number.ts';
import type { shownWhen } from './shown-when.ts';

/** Widths of a picture on paper, in pixels of 1/96 inch: 30 and 40 mm for the margin, 69 and 111 mm for the text. */
const widths = { small: 114, margin: 152, medium: 260, wide: 420 };
export type PictureSize = keyof typeof widths;

/** Least height of the numbers, in pixels: 7.5 points, to be read at arm's length. */
const leastHeight = 10;
const mostRadius = 16;

/** Of the width of a pattern, for its bolts not to touch. */
const shareOfGap = 0.4;

/** Between the edge of a bolt and the outline of the part, and between that and the edge of the picture. */
const rim = 4;
const edge = 1;

/**
 * A picture of the bolts, each with its place in the order, the first one black. It takes the first of the sizes at which
 * its numbers can be read; undefined where there is none. `label` says the same to those who cannot see it.
 */
export function tighteningPicture(
  order: TighteningOrder,
  label: string,
  sizes: readonly PictureSize[],
): Element | undefined {
  const least = leastHeight / heightOver(order.order.length);
  const size = sizes.find((one) => radiusAt(order, widths[one]) >= least);
  return size && drawn(order, label, size);
}

function drawn(order: TighteningOrder, label: string, size: PictureSize): Element {
  const width = widths[size];
  const radius = radiusAt(order, width);
  const height = radius * heightOver(order.order.length);
  const border = radius + rim + edge;
  const span = order.width > 0 || order.height > 0 ? width - 2 * border : 0;
  const box = {
    width: order.width * span + 2 * border,
    height: order.height * span + 2 * border,
  };
  const place = ({ x, y }: Position) => ({ x: border + x * span, y: border + y * span });
  const view = `0 0 ${pictureNumber(box.width)} ${pictureNumber(box.height)}`;
  return s(
    'svg',
    {
      viewBox: view,
      width: pictureNumber(box.width),
      height: pictureNumber(box.height),
      className: ['tightening', size],
      role: 'img',
      ariaLabel: label,
    },
    [
      outline(order, box, radius),
      ...order.order.map((position, i) => bolt(place(position), radius, height, i + 1)),
    ],
  );
}

function outline({ outline }: TighteningOrder, box: Box, radius: number): Element {
  if (outline === 'circle') {
    const [cx, cy] = [pictureNumber(box.width / 2), pictureNumber(box.height / 2)];
    return s('circle.part', { cx, cy, r: pictureNumber(box.width / 2 - edge) });
  }
  return s('rect.part', {
    x: pictureNumber(edge),
    y: pictureNumber(edge),
    width: pictureNumber(box.width - 2 * edge),
    height: pictureNumber(box.height - 2 * edge),
    rx: pictureNumber(radius + rim),
  });
}

interface Box {
  readonly width: number;
  readonly height: number;
}

function bolt(
  { x, y }: { x: number; y: number },
  radius: number,
  height: number,
  number: number,
): Element {
  const className = number === 1 ? ['bolt', 'first'] : ['bolt'];
  return s('g', { className }, [
    s('circle', { cx: pictureNumber(x), cy: pictureNumber(y), r: pictureNumber(radius) }),
    s(
      'text',
      // Half the height of a figure below the middle: 0.72 em is that of common sans serif faces.
      {
        x: pictureNumber(x),
        y: pictureNumber(y + height * 0.36),
        fontSize: pictureNumber(height),
        textAnchor: 'middle',
      },
      String(number),
    ),
  ]);
}

/** Height of the numbers over the radius of the bolts, for up to three digits to stay in them. */
const heightOver = (count: number): number => (count < 10 ? 1.45 : count < 100 ? 1.3 : 1.05);

/** All bolts as large as the two nearest ones and the width of the picture let them be. */
function radiusAt(order: TighteningOrder, width: number): number {
  const gap = nearestGap(order.order);
  const share = shareOfGap * gap;
  return Math.min(mostRadius, (share * (width - 2 * (rim + edge))) / (1 + 2 * share));
}

/** Between the two bolts that are nearest to each other, in the unit of their places. */
function nearestGap(positions: readonly Position[]): number {
  const byX = positions.toSorted((a, b) => a.x - b.x || a.y - b.y);
  let gap = 1;
  for (const [i, one] of byX.entries()) {
    for (const other of byX.slice(i + 1, i + 1 + mostNeighbours)) {
      if (other.x - one.x >= gap) break;
      gap = Math.min(gap, Math.hypot(other.x - one.x, other.y - one.y));
    }
  }
  return gap;
}

/** More bolts than any picture has room for need not all be compared. */
const mostNeighbours = 500;

/** A picture of its own below the text, for patterns with too many bolts for the margin. */
export function pictureFigure(
  picture: Element,
  caption: string,
  shown: ReturnType<typeof shownWhen>,
): Element {
  return h('figure.tightening-figure', shown, [picture, h('figcaption', caption)]);
}
