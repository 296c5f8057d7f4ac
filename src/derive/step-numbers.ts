import { blocksIn } from '../link/index.ts';
import type { Block, Perform, Procedure, Reverse, Section, Step } from '../syntax/index.ts';

/** What has a number and a tick box on a sheet: a step, or a job of another sheet that stands outside the lists. */
export type Numbered = Step | Perform | Reverse;

export interface StepNumbers {
  /** `7`, or `3.1` for a step inside step 3. */
  of(numbered: Numbered): string | undefined;
  /** Number of the step that the writer gave this id. */
  byId(id: string): string | undefined;
  /** How many numbers of the first rank there are, of the whole sheet or of one section. */
  total(section?: Section): number;
}

/** Numbers the steps of a procedure from 1 through all its sections, in order of reading. */
export function stepNumbers(procedure: Procedure): StepNumbers {
  const numbers = new Map<Numbered, string>();
  const ids = new Map<string, string>();
  const totals = new Map<Section, number>();
  const give = (numbered: Numbered, number: string): void => {
    numbers.set(numbered, number);
    if (numbered.type !== 'step') return;
    const id = numbered.id?.id;
    if (id !== undefined && !ids.has(id)) ids.set(id, number);
    count(numbered.blocks, `${number}.`, 0, true);
  };
  const count = (
    blocks: readonly Block[],
    prefix: string,
    from: number,
    isInStep: boolean,
  ): number => {
    let last = from;
    for (const block of blocks) {
      if (block.type === 'steps') {
        for (const step of block.steps) give(step, `${prefix}${++last}`);
      } else if (block.type === 'perform' || block.type === 'reverse') {
        if (!isInStep) give(block, `${prefix}${++last}`);
      } else last = count(blocksIn(block), prefix, last, isInStep);
    }
    return last;
  };
  let last = 0;
  for (const section of procedure.sections) {
    const next = count(section.blocks, '', last, false);
    totals.set(section, next - last);
    last = next;
  }
  return {
    of: (numbered) => numbers.get(numbered),
    byId: (id) => ids.get(id),
    total: (section) => (section === undefined ? last : (totals.get(section) ?? 0)),
  };
}
