import { actionsIn, allSteps, type LinkedProcedure } from '../../link/index.ts';
import type { Action, Block, Prose, Step } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';
import { type RunningText, runningTexts } from './running-text.ts';

/** The words that one step says itself, not those of the steps inside it, nor of panels and figures. */
export interface StepText {
  readonly step: Step;
  readonly text: RunningText;
  /** All actions of the step. */
  readonly actions: readonly Action[];
}

/** The words of all steps of a procedure, in order of reading. Made once for all rules. */
export const stepTexts: (one: LinkedProcedure) => readonly StepText[] = onceFor((one) => [
  ...textsOfSteps(one),
]);

function* textsOfSteps(one: LinkedProcedure): Generator<StepText> {
  for (const step of allSteps(one.procedure)) {
    const actions = [...actionsIn(step.blocks)];
    for (const prose of ownProse(step.blocks)) {
      for (const text of runningTexts(prose, one)) yield { step, text, actions };
    }
  }
}

function* ownProse(blocks: readonly Block[]): Generator<Prose> {
  for (const block of blocks) {
    if (block.type === 'prose') yield block;
    else if (block.type === 'guarded' || block.type === 'repeat') yield* ownProse(block.blocks);
    else if (block.type === 'branch') for (const way of block.ways) yield* ownProse(way.blocks);
  }
}
