import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Item } from '../catalogue/index.ts';
import type { PlacedJob, StepNumbers } from '../derive/index.ts';
import { within } from '../link/index.ts';
import type { FigureBlock, Section } from '../syntax/index.ts';

/** A figure with call-outs on a sheet. */
export interface ShownFigure {
  /** Id of its element; that of the key's entry 2 ends in -2. */
  readonly id: string;
  /** Its number on the sheet; undefined where it is the only one with call-outs. */
  readonly number: number | undefined;
}

/** Those of the sheet's own text, and of each job that is printed in place on it. */
export type ShownFigures = ReadonlyMap<
  PlacedJob | undefined,
  ReadonlyMap<FigureBlock, ShownFigure>
>;

/** The figures with call-outs of a sheet, numbered in order of reading. */
export function shownFigures(sections: readonly Section[], numbers: StepNumbers): ShownFigures {
  const called = [...calledFigures({ sections, numbers }, undefined)];
  const shown = new Map<PlacedJob | undefined, Map<FigureBlock, ShownFigure>>();
  for (const [i, { block, job }] of called.entries()) {
    const own = shown.get(job) ?? new Map<FigureBlock, ShownFigure>();
    shown.set(job, own);
    own.set(block, { id: `figure-${i + 1}`, number: called.length > 1 ? i + 1 : undefined });
  }
  return shown;
}

function* calledFigures(
  { sections, numbers }: Pick<PlacedJob, 'sections' | 'numbers'>,
  job: PlacedJob | undefined,
): Generator<{ readonly block: FigureBlock; readonly job: PlacedJob | undefined }> {
  for (const block of sections.flatMap(({ blocks }) => [...within(blocks)])) {
    if (block.type === 'figure' && block.callouts.length > 0) yield { block, job };
    const inner = block.type === 'perform' ? numbers.job(block) : undefined;
    if (inner !== undefined) yield* calledFigures(inner, inner);
  }
}

/** "①" behind the words for an item, a link to the first figure that shows it; nothing where none does. */
export function calloutMark(
  item: Item | undefined,
  figures: ReadonlyMap<FigureBlock, ShownFigure>,
): Element[] {
  if (item === undefined) return [];
  for (const [{ callouts }, { id, number }] of figures) {
    const at = callouts.findIndex((callout) => callout.item?.id === item.id) + 1;
    if (at === 0) continue;
    const figure = number === undefined ? 'the figure' : `figure ${number}`;
    return [
      h('a.shown', { href: `#${id}-${at}`, ariaLabel: `number ${at} in ${figure}` }, [
        ...(number === undefined ? [] : [`Fig.\u00a0${number}\u00a0`]),
        h('span.callout', String(at)),
      ]),
    ];
  }
  return [];
}
