import { blocksIn } from '../../../src/link/index.ts';
import type { Block, HazardPanel, Procedure, Step } from '../../../src/syntax/index.ts';
import type { Edit } from '../edit.ts';
import type { Operator } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

export const takeHazardAway: Operator = {
  name: 'take a hazard away',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const placed of placedPanels(procedure)) {
      yield { ...wordsFor(procedure, placed), edits: [removal(placed)] };
    }
  },
};

/** The panel comes after the step it guards; one that stands before a list comes after the list. */
export const putHazardBehind: Operator = {
  name: 'put a hazard behind its step',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const placed of placedPanels(procedure)) {
      const behind = placed.step ?? placed.next;
      if (behind === undefined) continue;
      const { end } = behind.place;
      const indent = behind.place.start.column - 1;
      const panel = indented(procedure, placed.panel, indent);
      yield {
        ...wordsFor(procedure, placed),
        edits: [removal(placed), { start: end.offset, end: end.offset, text: `\n\n${panel}` }],
      };
    }
  },
};

interface Placed {
  readonly panel: HazardPanel;
  /** The innermost step that it stands in. */
  readonly step: Step | undefined;
  readonly before: Block | undefined;
  readonly next: Block | undefined;
}

function* placedPanels(procedure: Procedure): Generator<Placed> {
  for (const section of procedure.sections) yield* among(section.blocks, undefined);
}

function* among(blocks: readonly Block[], step: Step | undefined): Generator<Placed> {
  for (const [i, block] of blocks.entries()) {
    if (block.type === 'hazard')
      yield { panel: block, step, before: blocks[i - 1], next: blocks[i + 1] };
    if (block.type === 'steps') {
      for (const inner of block.steps) yield* among(inner.blocks, inner);
    } else if (block.type === 'branch') {
      for (const way of block.ways) yield* among(way.blocks, step);
    } else yield* among(blocksIn(block), step);
  }
}

/** With the blank lines up to a neighbour, so that what is left is still one step. */
function removal({ panel, before, next }: Placed): Edit {
  const start = panel.place.start.offset;
  const end = panel.place.end.offset;
  if (next !== undefined) return { start, end: next.place.start.offset, text: '' };
  if (before !== undefined) return { start: before.place.end.offset, end, text: '' };
  return { start, end, text: 'Look at this.' };
}

function indented({ text }: Procedure, { place }: HazardPanel, indent: number): string {
  const from = place.start.column - 1;
  return text
    .slice(place.start.offset, place.end.offset)
    .split('\n')
    .map((line, i) => ' '.repeat(indent) + (i === 0 ? line : dedented(line, from)))
    .join('\n');
}

function dedented(line: string, by: number): string {
  const blank = line.length - line.trimStart().length;
  return line.slice(Math.min(by, blank));
}

function wordsFor(procedure: Procedure, { panel }: Placed) {
  return { words: sourceWords(procedure, panel.place), about: { is: 'panel', panel } as const };
}
