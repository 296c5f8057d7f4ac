import { actionsIn, within } from '../../link/index.ts';
import type { Block, Section, Step } from '../../syntax/index.ts';
import { type RunningText, runningTexts } from '../reading/running-text.ts';
import { sentencesOf } from '../reading/sentences.ts';
import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { reversePhrase } from '../wording/reverse.ts';

export const rule: Rule = {
  id: 'reverse-order',
  family: 'words',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const [id, one] of examined.linked.procedures) {
      for (const section of one.procedure.sections) {
        for (const { block, step } of proseOf(section.blocks, undefined)) {
          if (isWrittenOut(section, step)) continue;
          for (const text of runningTexts(block, one)) yield* draftsIn(text, id);
        }
      }
    }
  },
};

function* draftsIn(text: RunningText, procedure: string): Generator<Draft> {
  for (const { start, end } of sentencesOf(text)) {
    const phrase = reversePhrase(text.text.slice(start, end));
    if (phrase === undefined) continue;
    yield {
      place: text.placeOf(start + phrase.start, start + phrase.end),
      procedure,
      message: `“${phrase.words}” leaves the steps to the reader, and they cannot be counted`,
      data: { words: phrase.words },
      help: `Write the steps out, or write ${code('::reverse{of=removal}')} with the id of the section to turn round.`,
    };
  }
}

interface Placed {
  readonly block: Extract<Block, { type: 'prose' }>;
  readonly step: Step | undefined;
}

function* proseOf(blocks: readonly Block[], step: Step | undefined): Generator<Placed> {
  for (const block of blocks) {
    if (block.type === 'prose') yield { block, step };
    else if (block.type === 'steps')
      for (const inner of block.steps) yield* proseOf(inner.blocks, inner);
    else if (block.type === 'branch')
      for (const way of block.ways) yield* proseOf(way.blocks, step);
    else if (block.type === 'guarded' || block.type === 'repeat')
      yield* proseOf(block.blocks, step);
  }
}

/** Beside a sentence in a step, its own actions are the steps; beside one outside, those of the section. */
function isWrittenOut(section: Section, step: Step | undefined): boolean {
  const blocks = step?.blocks ?? section.blocks;
  if ([...within(section.blocks)].some(({ type }) => type === 'reverse')) return true;
  return !actionsIn(blocks).next().done;
}
