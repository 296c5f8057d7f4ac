import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { the, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'aid-in-way',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('aid-in-way')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const aid = thingOf(examined, fact.procedure, fact.aid);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} yet: ${theyAre(aid)} still fitted and in the way`,
        help: `Add ${directive('withdraw', aid)} before this.`,
        related: [...traced(fact.since, aid.size), declared(fact.byPlace, 'what it blocks')],
      });
    }
  },
};
