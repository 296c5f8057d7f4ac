import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { missedWords } from '../wording/spread.ts';
import { the, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'nothing-there',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('nothing-there')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const part = thingOf(examined, fact.procedure, fact.part);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} here: ${theyAre(part)} still ${missedWords(fact.state)}`,
        help: `Put ${the(part)} back first, or move this after the step that does.`,
        related: [...traced(fact.since, part.size), declared(fact.byPlace, 'where it belongs')],
      });
    }
  },
};
