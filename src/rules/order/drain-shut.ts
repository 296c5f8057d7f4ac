import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { noneOpen, openingOf } from '../telling/opening.ts';
import { declared } from '../telling/trace.ts';
import { the, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'drain-shut',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('drain-shut')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const points = fact.points.map((id) => thingOf(examined, fact.procedure, id));
      const [first] = points;
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot drain: ${noneOpen(points)}`,
        help: first === undefined ? undefined : `Write ${openingOf(first)} before this.`,
        related: [declared(fact.byPlace, 'the drain')],
      });
    }
  },
};
