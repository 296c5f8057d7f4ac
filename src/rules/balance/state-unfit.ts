import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { oneOf } from '../wording/lists.ts';
import { spreadWords } from '../wording/spread.ts';
import { stateWord } from '../wording/states.ts';
import { the, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'state-unfit',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('state-unfit')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} here: ${thing.size === 1 ? 'it is' : 'they are'} ${spreadWords(fact.state)}, not ${oneOf(fact.from.map(stateWord))}`,
        help: 'Add the action that is missing before this one, or take this one out.',
        related: traced(fact.since, thing.size),
      });
    }
    for (const fact of examined.facts('already-done')) {
      if (fact.direction !== 'within') continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} to be ${verbWords[fact.verb].done} here, but ${thing.size === 1 ? 'is' : 'are'} ${spreadWords(fact.state)} already`,
        help: 'Take this action out.',
        related: traced(fact.since, thing.size),
      });
    }
  },
};
