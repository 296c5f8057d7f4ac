import type { LinkedProcedure } from '../../link/index.ts';
import type { Block, Prose, Section, Step } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** Prose that is said as work to do, with where it stands. */
export interface PlacedProse {
  readonly prose: Prose;
  readonly section: Section;
  /** The innermost step. */
  readonly step: Step | undefined;
  /** Whether it is said only for something that the technician may find. */
  readonly isInBranch: boolean;
}

/** All of a procedure outside of panels, figures and the like, in order of reading. Found once for all rules. */
export const placedProse: (one: LinkedProcedure) => readonly PlacedProse[] = onceFor(
  ({ procedure }) =>
    procedure.sections.flatMap((section) => [
      ...proseOf(section.blocks, { section, step: undefined, isInBranch: false }),
    ]),
);

type Where = Omit<PlacedProse, 'prose'>;

function* proseOf(blocks: readonly Block[], where: Where): Generator<PlacedProse> {
  for (const block of blocks) {
    if (block.type === 'prose') yield { prose: block, ...where };
    else if (block.type === 'guarded') yield* proseOf(block.blocks, where);
    else if (block.type === 'steps')
      for (const step of block.steps) yield* proseOf(step.blocks, { ...where, step });
    else if (block.type === 'branch')
      for (const way of block.ways) yield* proseOf(way.blocks, { ...where, isInBranch: true });
  }
}
