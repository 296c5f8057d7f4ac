import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { shuttingOf } from '../telling/opening.ts';
import { declared, traced } from '../telling/trace.ts';
import { missedWords } from '../wording/spread.ts';
import { theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'fill-open',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('fill-open')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const point = thingOf(examined, fact.procedure, fact.point);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} filled here while ${theyAre(point)} still ${missedWords(fact.state)}`,
        help: `Add ${shuttingOf(point)} before this.`,
        related: [...traced(fact.since, point.size), declared(fact.byPlace, 'the drain')],
      });
    }
  },
};
