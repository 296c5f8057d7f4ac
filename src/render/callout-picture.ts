import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PictureSize } from '../source/index.ts';
import { type Point, pitch, placeCallouts } from './callout-places.ts';
import { pictureNumber } from './picture-number.ts';

/** A number of a picture: where its leaders end, in percent of the picture, and where it leads. */
export interface PictureNumber {
  readonly points: readonly Point[];
  readonly href: string;
  /** What it shows, for those who cannot see it. */
  readonly name: string;
}

/** All pictures are drawn into these, so that the numbers have one size on all sheets: 8 points on the narrowest paper. */
const [widest, highest] = [640, 560];
const [radius, fontSize, dot] = [17, 20, 3.5];
/** Half the height of a figure below the middle: 0.72 em is that of common sans serif faces. */
const halfHeight = fontSize * 0.36;

/**
 * A picture with numbers around it, each a link with a leader to what it shows. The picture is only referred to, so
 * that nothing in its file can become a part of the page.
 */
export function calloutPicture(
  { href, alt, size }: { readonly href: string; readonly alt: string; readonly size: PictureSize },
  label: string,
  numbers: readonly PictureNumber[],
): Element {
  const scale = Math.min(widest / size.width, highest / size.height);
  const [width, height] = [size.width * scale, size.height * scale];
  const ends = numbers.map(({ points }) =>
    points.map(({ x, y }) => ({ x: (x / 100) * width, y: (y / 100) * height })),
  );
  const { circles, box } = placeCallouts({ width, height }, ends);
  const lines = circles.flatMap((circle, i) =>
    (ends[i] ?? []).map((end) => [circle, end] as const),
  );
  return s(
    'svg.called-out',
    {
      viewBox: [box.x, box.y, box.width, box.height].map(pictureNumber).join(' '),
      width: pictureNumber(box.width),
      height: pictureNumber(box.height),
      role: 'group',
      ariaLabel: label,
    },
    [
      s('image', {
        href,
        width: pictureNumber(width),
        height: pictureNumber(height),
        role: 'img',
        ariaLabel: alt,
      }),
      s('g.leaders', { ariaHidden: 'true' }, [
        ...lines.map(([from, to]) => line('halo', from, to)),
        ...lines.map(([from, to]) => line('leader', from, to)),
        ...lines.map(([, { x, y }]) =>
          s('circle.end', { cx: pictureNumber(x), cy: pictureNumber(y), r: pictureNumber(dot) }),
        ),
      ]),
      ...circles.flatMap((circle, i) => numberLink(circle, i + 1, numbers[i])),
    ],
  );
}

function line(className: string, from: Point, to: Point): Element {
  const [x1, y1, x2, y2] = [from.x, from.y, to.x, to.y].map(pictureNumber);
  return s('line', { className: [className], x1, y1, x2, y2 });
}

function numberLink({ x, y }: Point, number: number, shown: PictureNumber | undefined): Element[] {
  if (shown === undefined) return [];
  const [cx, cy] = [pictureNumber(x), pictureNumber(y)];
  return [
    s('a.number-link', { href: shown.href, ariaLabel: `${number}, ${shown.name}` }, [
      s('circle.touch', { cx, cy, r: pictureNumber(pitch / 2) }),
      s('circle.ring', { cx, cy, r: pictureNumber(radius) }),
      s(
        'text',
        {
          x: cx,
          y: pictureNumber(y + halfHeight),
          fontSize: pictureNumber(fontSize),
          textAnchor: 'middle',
        },
        String(number),
      ),
    ]),
  ];
}
