import { allBlocks } from '../../../src/link/index.ts';
import type { Operator } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/** Leaves out one perform, or one reverse. */
export const dropPerform: Operator = {
  name: 'drop a perform or a reverse',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const block of allBlocks(procedure)) {
      if (block.type !== 'perform' && block.type !== 'reverse') continue;
      const { start, end } = block.place;
      yield {
        edits: [{ start: start.offset, end: end.offset, text: 'Look at this.' }],
        words: sourceWords(procedure, block.place),
        about:
          block.type === 'perform'
            ? { is: 'perform', procedure: block.procedure.id }
            : { is: 'reverse' },
      };
    }
  },
};
