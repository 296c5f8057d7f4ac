import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { alreadyWords } from '../wording/spread.ts';
import { are, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'out-twice',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('already-done')) {
      if (fact.direction !== 'out') continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} to be ${verbWords[fact.verb].done} here, but ${are(thing)} ${alreadyWords(fact.state)}`,
        help: 'Take this action out, or put back first what it takes out.',
        related: traced(fact.since, thing.size),
      });
    }
  },
};
