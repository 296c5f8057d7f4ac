import { fallingStages } from '../reading/falling-stages.ts';
import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'stages-fall',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { item, torque, stage, place, before } of fallingStages(examined)) {
      const now = torque.written[stage] ?? '';
      const then = torque.written[stage - 1] ?? '';
      yield {
        place,
        item: item.id,
        message: `Stage ${stage + 1} of ${the(thing(item.id, item))} is ${now}, lower than the ${then} before it`,
        data: { stages: [...torque.written], stage: stage + 1 },
        related: [related(before, 'the stage before it')],
        help: `Put the stages in the order in which they are done, or write the loosening between them, such as ${code('back off 1/4 turn')}.`,
      };
    }
  },
};
