import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { missedWords } from '../wording/spread.ts';
import { are, isMany, the, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'closed-over',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('closed-over')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const over = thingOf(examined, fact.procedure, fact.over);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} ${isMany(thing, thing.size) ? 'close' : 'closes'} over ${the(over)} here, which ${are(over)} still ${missedWords(fact.state)}`,
        help: `Put ${the(over)} back before this, or move this after the step that does.`,
        related: [...traced(fact.since, over.size), declared(fact.byPlace, 'what is behind it')],
      });
    }
  },
};
