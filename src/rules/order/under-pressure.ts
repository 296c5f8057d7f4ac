import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { the, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'under-pressure',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('under-pressure')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const circuit = thingOf(examined, fact.procedure, fact.circuit);
      const what = fact.item === fact.circuit ? 'it' : the(circuit);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} ${verbWords[fact.verb].done} here while ${what} is under pressure`,
        help: `Add ${directive('relieve', circuit)} before this.`,
        related: [...traced(fact.since, 1), declared(fact.byPlace, 'the pressure')],
      });
    }
  },
};
