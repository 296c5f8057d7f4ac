import type { States } from '../../../schemas/front-matter.ts';
import { allBlocks } from '../../link/index.ts';
import { lost, lostProcedures } from '../reading/lost-procedures.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { jsonOf } from '../telling/json.ts';
import { allOf, code, sentence } from '../wording/lists.ts';
import { spreadWords } from '../wording/spread.ts';
import { the, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'orphan-procedure',
  family: 'links',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const {
      id,
      one: { procedure },
    } of examined.subjects) {
      const { starts, leaves } = procedure.front;
      const member = Object.keys(leaves).length > 0 ? 'leaves' : 'starts';
      const states = procedure.front[member];
      if (Object.keys(states).length === 0) continue;
      const changed = statesInWords(examined, id, states);
      yield {
        place: procedure.placeOf(member),
        procedure: id,
        message: sentence(
          member === 'leaves'
            ? `this job ends with ${changed}, and no other procedure goes on from there`
            : `this job starts with ${changed}, and no other procedure brings the machine there`,
        ),
        data: { starts: jsonOf(starts), leaves: jsonOf(leaves) },
        help: `Perform it with ${code(`::perform{procedure=${id}}`)} in the job that needs it, so that the whole is balanced.`,
        unless: [lost, performed(id)],
      };
    }
  },
  *settles(examined): Generator<string> {
    yield* lostProcedures(examined);
    for (const { one } of examined.subjects)
      for (const block of allBlocks(one.procedure))
        if (block.type === 'perform') yield performed(block.procedure.id);
  },
};

const performed = (id: string): string => `performed: ${id}`;

function statesInWords(examined: Examined, procedure: string, states: States): string {
  return allOf(
    Object.entries(states).map(([item, state]) => {
      const thing = thingOf(examined, procedure, item);
      const spread =
        typeof state === 'string' ? [[state, thing.size] as const] : Object.entries(state);
      return `${the(thing)} ${spreadWords(spread)}`;
    }),
  );
}
