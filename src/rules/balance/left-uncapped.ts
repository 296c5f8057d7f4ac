import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { declared } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-uncapped',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('uncapped')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const connected = fact.connectedAt;
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} opened here and not capped in this step or the next`,
        help: `Add ${directive('cap', thing)} to this step or the next, and ${directive('uncap', thing)} before it is connected again.`,
        related: [
          ...(connected === undefined ? [] : [related(connected, 'connected again only here')]),
          declared(fact.byPlace, 'cap-when-open'),
        ],
      });
    }
  },
};
