import { actionsIn, allBlocks } from '../../link/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'action-in-hazard',
  family: 'words',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const block of allBlocks(one.procedure)) {
        if (block.type !== 'hazard') continue;
        for (const action of actionsIn(block.blocks)) {
          yield {
            place: action.place,
            procedure,
            item: action.item.id,
            message: `The action ${code(`:${action.verb}`)} hides in a hazard panel; it is counted, but a technician may read over it`,
            data: { verb: action.verb, item: action.item.id },
            help: 'Make it a step of its own before the step that the panel guards.',
          };
        }
      }
    }
  },
};
