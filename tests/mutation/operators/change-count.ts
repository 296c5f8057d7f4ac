import { movingActions } from '../moving-actions.ts';
import type { Operator } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/** One piece more or one less where a count is given; all but one where none is. */
export const changeCount: Operator = {
  name: 'change a count',
  *mutations({ linked }) {
    const { procedure } = linked;
    for (const { action, item } of movingActions(linked)) {
      const said = sourceWords(procedure, action.place);
      const about = { is: 'action', action, item } as const;
      if (action.qty !== undefined) {
        const { count, place } = action.qty;
        for (const other of count > 1 ? [count - 1, count + 1] : [count + 1]) {
          const edit = { start: place.start.offset, end: place.end.offset, text: String(other) };
          yield { edits: [edit], words: `${said} → qty=${other}`, about };
        }
      } else if ('count' in item && item.count > 1) {
        const close = action.place.end.offset - 1;
        const edit = { start: close, end: close, text: ` qty=${item.count - 1}` };
        yield { edits: [edit], words: `${said} → qty=${item.count - 1}`, about };
      }
    }
  },
};
