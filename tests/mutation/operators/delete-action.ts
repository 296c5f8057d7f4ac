import type { Verb } from '../../../schemas/directives.ts';
import { allBlocks, allSteps } from '../../../src/link/index.ts';
import type { Action, Procedure, Step, TorqueBlock } from '../../../src/syntax/index.ts';
import type { Edit } from '../edit.ts';
import { movingActions } from '../moving-actions.ts';
import type { Operator } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/** Words in the place of a directive: they name no verb of work and no item. */
const neutral = 'Look at this';

/** Leaves out one action, with the torque block of the same item where the action is a torque. */
export function deleteAction(name: string, verbs: readonly Verb[]): Operator {
  return {
    name,
    *mutations({ linked }) {
      const { procedure } = linked;
      for (const { action, item } of movingActions(linked)) {
        if (!verbs.includes(action.verb)) continue;
        yield {
          edits: deletion(procedure, action),
          words: sourceWords(procedure, action.place),
          about: { is: 'action', action, item },
        };
      }
    },
  };
}

function deletion(procedure: Procedure, action: Action): readonly Edit[] {
  const blocks = action.verb === 'torque' ? torqueBlocks(procedure, action) : [];
  const isBlock = blocks.some((block) => block.action === action);
  const words: Edit[] = isBlock ? [] : [replaced(action.place, neutral)];
  return [...words, ...blocks.map(({ place }) => replaced(place, isBlock ? neutral : ''))];
}

/** Blocks in the same step that would say the same. */
function torqueBlocks(procedure: Procedure, action: Action): readonly TorqueBlock[] {
  const step = [...allSteps(procedure)].findLast((one) => isInside(one, action));
  return [...allBlocks(procedure)].filter(
    (block): block is TorqueBlock =>
      block.type === 'torque' &&
      block.item.id === action.item.id &&
      step !== undefined &&
      isInside(step, block),
  );
}

const isInside = (step: Step, { place }: Pick<Action, 'place'>): boolean =>
  step.place.start.offset <= place.start.offset && place.end.offset <= step.place.end.offset;

const replaced = ({ start, end }: Action['place'], text: string): Edit => ({
  start: start.offset,
  end: end.offset,
  text,
});
