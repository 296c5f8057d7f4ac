import { actionsIn, allBlocks, type LinkedManual, type LinkedProcedure } from '../../link/index.ts';
import type { Action, Block } from '../../syntax/index.ts';
import { noteLabel } from '../wording/work-outside.ts';
import { placedProse } from './placed-prose.ts';
import { type RunningText, runningTexts } from './running-text.ts';
import { sentencesOf } from './sentences.ts';

/** Words beside the work: of a hazard panel, a quotation, or a sentence that begins with "Note:". */
export interface TextAside {
  readonly text: RunningText;
  /** What the procedure and those that it performs do anywhere: a note may say it over. */
  readonly actions: readonly Action[];
}

export function* textsAside(one: LinkedProcedure, manual: LinkedManual): Generator<TextAside> {
  const texts = [...asideIn(one)];
  if (texts.length === 0) return;
  const actions = [...actionsWithin(one, manual, new Set())];
  for (const text of texts) yield { text, actions };
}

function* asideIn(one: LinkedProcedure): Generator<RunningText> {
  for (const block of allBlocks(one.procedure)) {
    if (block.type === 'hazard') yield* proseTexts(block.blocks, one);
  }
  for (const { prose } of placedProse(one)) {
    for (const text of runningTexts(prose, one)) {
      if (prose.node.type === 'blockquote') yield withoutLabels(text);
      else yield* notesIn(text);
    }
  }
}

function* proseTexts(blocks: readonly Block[], one: LinkedProcedure): Generator<RunningText> {
  for (const block of blocks) {
    if (block.type === 'prose') yield* runningTexts(block, one).map(withoutLabels);
    else if (block.type === 'steps')
      for (const step of block.steps) yield* proseTexts(step.blocks, one);
  }
}

/** Every sentence with a label, by itself and without it, at the same offsets. */
function* notesIn(text: RunningText): Generator<RunningText> {
  for (const { start, end } of sentencesOf(text)) {
    const label = noteLabel.exec(text.text.slice(start, end))?.[0].length;
    if (label === undefined) continue;
    const words = ' '.repeat(start + label) + text.text.slice(start + label, end);
    yield { ...text, text: words, stretches: text.stretches.filter((one) => one.start >= start) };
  }
}

function withoutLabels(text: RunningText): RunningText {
  let words = text.text;
  for (const { start, end } of sentencesOf(text)) {
    const label = noteLabel.exec(words.slice(start, end))?.[0].length ?? 0;
    words = words.slice(0, start) + ' '.repeat(label) + words.slice(start + label);
  }
  return { ...text, text: words };
}

function* actionsWithin(
  { procedure }: LinkedProcedure,
  manual: LinkedManual,
  seen: Set<string>,
): Generator<Action> {
  if (seen.has(procedure.id)) return;
  seen.add(procedure.id);
  for (const { blocks } of procedure.sections) yield* actionsIn(blocks);
  for (const block of allBlocks(procedure)) {
    const performed =
      block.type === 'perform' ? manual.procedures.get(block.procedure.id) : undefined;
    if (performed !== undefined) yield* actionsWithin(performed, manual, seen);
  }
}
