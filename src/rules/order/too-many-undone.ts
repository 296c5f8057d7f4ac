import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { counted, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'too-many-undone',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('too-many-undone')) {
      const { undone, most } = fact;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `From here ${counted(thing, undone)} are loose or out at the same time, and the catalogue allows ${most}`,
        help: `Undo ${most === 1 ? 'one' : `at most ${most}`} at a time with ${code(`qty=${most}`)}, and torque ${most === 1 ? 'it' : 'them'} before the next.`,
        related: [declared(fact.byPlace, 'the limit'), ...traced(fact.since, thing.size)],
      });
    }
  },
};
