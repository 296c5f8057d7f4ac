import type { Verb } from '../../../schemas/directives.ts';
import { movingActions } from '../moving-actions.ts';
import type { Operator } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

const removals: readonly Verb[] = [
  'remove',
  'disconnect',
  'drain',
  'isolate',
  'fit',
  'loosen',
  'set-aside',
];

/** Says a removal twice, one right after the other. */
export const duplicateRemoval: Operator = {
  name: 'duplicate a removal',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const { action, item } of movingActions(linked)) {
      if (!removals.includes(action.verb)) continue;
      const { start, end } = action.place;
      const again = procedure.text.slice(start.offset, end.offset);
      yield {
        edits: [{ start: end.offset, end: end.offset, text: `. ${again}` }],
        words: sourceWords(procedure, action.place),
        about: { is: 'action', action, item },
      };
    }
  },
};
