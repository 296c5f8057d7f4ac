import type { Element } from 'hast';
import { h, s } from 'hastscript';
import { type StepRun, stepRuns } from '../derive/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { type Layout, layeredLayout, type Shape } from './layered-layout.ts';
import { arrowhead, curve, pictureNumber } from './line-paths.ts';
import { stepAnchor } from './site-links.ts';

const height = 30;
const letter = 9;

/**
 * What must be done before what on a sheet whose steps need not all follow each other: runs of steps by
 * their numbers, with an arrow from each to those that come after it. Folded away on a screen, not on paper;
 * nothing where all steps follow each other as they stand.
 */
export function orderPicture(one: LinkedProcedure): Element[] {
  const runs = stepRuns(one) ?? [];
  if (runs.length === 0) return [];
  const shapes = runs.map((run, i): Shape => {
    const width = Math.max(height, wordsOf(run).length * letter + 14);
    return { id: String(i), width, height };
  });
  const layout = layeredLayout(
    shapes,
    runs.flatMap(({ after }, i) => after.map((place) => [String(place), String(i)] as const)),
  );
  return [
    h('details.order', [
      h('summary', 'For reviewers: which steps must follow which'),
      h(
        'p',
        'Of steps that no line joins, neither the text nor the catalogue says which comes first. Work in the order of the sheet. The numbers are those of the sheet for all machines.',
      ),
      h('div.wide', { role: 'group', ariaLabel: 'Order of the steps', tabIndex: 0 }, [
        drawn(runs, shapes, layout),
      ]),
    ]),
  ];
}

function drawn(runs: readonly StepRun[], shapes: readonly Shape[], layout: Layout): Element {
  const { width, height: tall, lines, middles } = layout;
  return s(
    'svg',
    {
      viewBox: `0 0 ${width} ${tall}`,
      width,
      height: tall,
      className: ['ties'],
      role: 'group',
      ariaLabel: inWords(runs),
    },
    [
      s('path', { className: ['tie'], d: lines.map(curve).join('') }),
      s('path.tips', { d: lines.map(arrowhead).join('') }),
      ...runs.map((run, i) => box(run, shapes[i], middles.get(String(i)))),
    ],
  );
}

function box(
  run: StepRun,
  shape: Shape | undefined,
  middle: { readonly x: number; readonly y: number } | undefined,
): Element {
  if (shape === undefined || middle === undefined) return s('g');
  const { x, y } = middle;
  return s('a', { href: `#${stepAnchor(run.first)}` }, [
    s('rect', {
      x: pictureNumber(x - shape.width / 2),
      y: pictureNumber(y - height / 2),
      width: pictureNumber(shape.width),
      height,
      rx: height / 2,
    }),
    s('text', { x: pictureNumber(x), y: pictureNumber(y + 5) }, [wordsOf(run)]),
  ]);
}

/** "7", "4 to 9". */
function wordsOf({ first, last }: StepRun): string {
  return first === last ? first : `${first} to ${last}`;
}

/** "1 to 3 first; 4 to 7 after 1 to 3; 8 after 1 to 3". */
function inWords(runs: readonly StepRun[]): string {
  return runs
    .map((run) => {
      const before = run.after.flatMap((place) => runs[place] ?? []).map(wordsOf);
      return `${wordsOf(run)} ${before.length === 0 ? 'first' : `after ${before.join(' and ')}`}`;
    })
    .join('; ');
}
