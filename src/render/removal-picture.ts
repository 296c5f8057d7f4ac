import type { Element } from 'hast';
import { h, s } from 'hastscript';
import type { Item } from '../catalogue/index.ts';
import { itemName, type TiedGroup, type TieKind } from '../derive/index.ts';
import { type Layout, layeredLayout, type Shape, type Spot } from './layered-layout.ts';
import { arrowhead, curve, pictureNumber } from './line-paths.ts';

/** Width of a letter, least width of a box, height of a line of it, and what is around the words. */
const letter = 7;
const least = 44;
const line = 16;
const around = 16;
/** Longer names go over two lines; the shorter of the two where the picture would be wider than paper. */
const longest = [18, 9] as const;
/** Width of A4 and Letter within their margins, in pixels of 1/96 inch. */
const paper = 700;

/** What a line of each kind says, from the item at its left end to the one at its right. */
const tieWords: Record<TieKind, string> = {
  holds: 'holds',
  behind: 'is in front of',
  on: 'is connected to',
  in: 'takes along',
};

/**
 * A picture of what holds what and what is behind what: what comes off first is on the left. Boxes link to
 * the rows of the machine's page; the same is said there in words.
 */
export function removalPicture(group: TiedGroup): Element {
  const wide = placed(group, longest[0]);
  const { boxes, layout } = wide.layout.width > paper ? placed(group, longest[1]) : wide;
  const { width, height } = layout;
  return s(
    'svg',
    {
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      className: ['ties'],
      role: 'group',
      ariaLabel: `${group.items.length} items around the ${itemName(group.centre)} and what ties them together`,
    },
    [
      ...linesOf(group, layout),
      ...group.items.map((item) => drawn(item, boxes.get(item.id), layout.middles.get(item.id))),
    ],
  );
}

function placed(group: TiedGroup, most: number) {
  const boxes = new Map(group.items.map((item) => [item.id, boxOf(item, most)]));
  const layout = layeredLayout(
    [...boxes.values()],
    group.ties.map(({ from, to }) => [from.id, to.id]),
  );
  return { boxes, layout };
}

interface Box extends Shape {
  readonly words: readonly string[];
}

function boxOf(item: Item, most: number): Box {
  const words = inLines(itemName(item), most);
  const width = Math.max(...words.map((one) => one.length)) * letter + around;
  return {
    id: item.id,
    words,
    width: Math.max(least, width),
    height: words.length * line + around / 2,
  };
}

/** A name on one line, or on two that are as near to each other in length as its spaces allow. */
function inLines(name: string, most: number): readonly string[] {
  if (name.length <= most) return [name];
  const breaks = [...name.matchAll(/[ -]/g)].map(({ index }) => index + 1);
  const best = breaks.sort(
    (a, b) => Math.abs(name.length - 2 * a) - Math.abs(name.length - 2 * b) || a - b,
  )[0];
  return best === undefined ? [name] : [name.slice(0, best).trim(), name.slice(best)];
}

function drawn(item: Item, box: Box | undefined, middle: Spot | undefined): Element {
  if (box === undefined || middle === undefined) return s('g');
  const { width, height, words } = box;
  const isPiece = item.kind === 'fastener' || item.kind === 'connection';
  const first = middle.y - ((words.length - 1) * line) / 2 + 4.5;
  return s(
    'a',
    { href: `#${item.id}`, className: item.when === undefined ? undefined : ['some'] },
    [
      s('rect', {
        x: pictureNumber(middle.x - width / 2),
        y: pictureNumber(middle.y - height / 2),
        width: pictureNumber(width),
        height: pictureNumber(height),
        rx: isPiece ? pictureNumber(height / 2) : undefined,
      }),
      ...words.map((text, i) =>
        s('text', { x: pictureNumber(middle.x), y: pictureNumber(first + i * line) }, [text]),
      ),
    ],
  );
}

/** The lines of each kind in one path, and all arrowheads in another. */
function linesOf({ ties }: TiedGroup, { lines }: Layout): Element[] {
  const kinds = Map.groupBy(
    ties.map(({ kind }, i) => ({ kind, points: lines[i] ?? [] })),
    ({ kind }) => kind,
  );
  const paths = Object.keys(tieWords).flatMap((kind) => {
    const found = [...kinds].filter(([one]) => one === kind).flatMap(([, some]) => some);
    if (found.length === 0) return [];
    return [
      s('path', { className: ['tie', kind], d: found.map((one) => curve(one.points)).join('') }),
    ];
  });
  const heads = lines.map(arrowhead).join('');
  return [...paths, s('path.tips', { d: heads })];
}

/** What the kinds of lines and boxes mean, below the pictures that have them. */
export function tieLegend(kinds: ReadonlySet<TieKind>): Element {
  const rows = (['holds', 'behind', 'on', 'in'] as const).filter((kind) => kinds.has(kind));
  return h(
    'ul.tie-legend',
    rows.map((kind) =>
      h('li', [
        s('svg', { viewBox: '0 0 56 10', width: 56, height: 10, ariaHidden: 'true' }, [
          s('path', { className: ['tie', kind], d: 'M0 5L48 5' }),
          s('path.tips', { d: 'M48 1.5L56 5L48 8.5Z' }),
        ]),
        ` ${tieWords[kind]}`,
      ]),
    ),
  );
}
