import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft, titleOf } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { traced } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { spreadWords } from '../wording/spread.ts';
import { them, theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'start-not-met',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('start-not-met')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} ${spreadWords(fact.state)} here, but “${titleOf(examined, fact.callee)}” starts with ${them(thing)} ${spreadWords(fact.expected)}`,
        help: `Bring the machine to that state first, or correct ${code('starts')} of ${code(fact.callee)}.`,
        related: [related(fact.declared, 'expected here'), ...traced(fact.since, thing.size)],
      });
    }
  },
};
