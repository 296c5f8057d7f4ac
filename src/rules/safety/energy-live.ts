import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'energy-live',
  family: 'safety',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('energy-live')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const energy = thingOf(examined, fact.procedure, fact.energy);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} ${verbWords[fact.verb].done} here while ${theyAre(energy)} live`,
        help: `Add ${directive('isolate', energy)} before this.`,
        related: [...traced(fact.since, 1), declared(fact.byPlace, 'the isolation')],
      });
    }
  },
};
