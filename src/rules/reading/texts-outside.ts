import { actionsIn, type LinkedProcedure } from '../../link/index.ts';
import type { Action, Block, Prose, Section } from '../../syntax/index.ts';
import { adviceColumn, typedNumber, workColumn } from '../wording/work-outside.ts';
import { type RunningText, runningTexts } from './running-text.ts';

/** Words outside of steps that are said as work to do. */
export interface TextOutside {
  readonly text: RunningText;
  readonly actions: readonly Action[];
  /** True where the paragraph is not marked as work by a number or a column, but only by what it says. */
  readonly isPlain: boolean;
}

/** Paragraphs with typed numbers, table columns of work, and paragraphs of sections that have no list. */
export function* textsOutside(one: LinkedProcedure): Generator<TextOutside> {
  for (const section of one.procedure.sections) {
    const isPlain = isOnlyProse(section);
    for (const prose of proseOutside(section.blocks)) {
      if (prose.node.type === 'table') yield* workCells(prose, one);
      else if (prose.node.type === 'paragraph') yield* paragraph(prose, one, isPlain, section);
    }
  }
}

function* proseOutside(blocks: readonly Block[]): Generator<Prose> {
  for (const block of blocks) {
    if (block.type === 'prose') yield block;
    else if (block.type === 'guarded' || block.type === 'repeat') yield* proseOutside(block.blocks);
    else if (block.type === 'branch') for (const way of block.ways) yield* proseOutside(way.blocks);
  }
}

/** A section under a heading whose work, if it has any, can only be in its paragraphs. */
function isOnlyProse({ title, blocks }: Section): boolean {
  return (
    title !== undefined &&
    blocks.every(
      (block) =>
        block.type === 'hazard' ||
        block.type === 'figure' ||
        (block.type === 'prose' && block.node.type === 'paragraph'),
    )
  );
}

function* paragraph(
  prose: Prose,
  one: LinkedProcedure,
  isPlain: boolean,
  section: Section,
): Generator<TextOutside> {
  for (const text of runningTexts(prose, one)) {
    const label = typedNumber.exec(text.text)?.[0].length;
    if (label === undefined && !isPlain) continue;
    const numberless =
      label === undefined ? text : { ...text, text: ' '.repeat(label) + text.text.slice(label) };
    const actions = label === undefined ? [...actionsIn(section.blocks)] : prose.actions;
    yield { text: numberless, actions, isPlain: label === undefined };
  }
}

function* workCells(prose: Prose, one: LinkedProcedure): Generator<TextOutside> {
  if (prose.node.type !== 'table') return;
  const [head = [], ...rows] = prose.node.children.map((row) => row.children);
  const texts = runningTexts(prose, one);
  const heads = texts.slice(0, head.length).map(({ text }) => text);
  if (heads.some((words) => adviceColumn.test(words))) return;
  const columns = rows.flatMap((row) => row.map((_, column) => column));
  for (const [i, text] of texts.slice(head.length).entries()) {
    const column = columns[i];
    if (column === undefined || !workColumn.test(heads[column] ?? '')) continue;
    yield { text, actions: prose.actions, isPlain: false };
  }
}
