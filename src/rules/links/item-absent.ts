import { doubtfulConditions } from '../reading/doubtful-conditions.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';
import { them, theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'item-absent',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    const isDoubtful = doubtfulConditions(examined);
    for (const fact of examined.facts('item-absent')) {
      if (isDoubtful(fact.inside?.place ?? fact.place)) continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} worked on here in variants that do not have ${them(thing)}`,
        help: `Add ${code(`when="${fact.itemWhen}"`)} to the action, or to the step that it stands in.`,
        related: [related(fact.byPlace, `only in ${fact.itemWhen}`)],
      });
    }
  },
};
