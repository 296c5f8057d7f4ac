import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { counted, isMany, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'old-part-unsaid',
  family: 'balance',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('old-unsaid')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const many = counted(thing, fact.count);
      yield ledgerDraft(examined, fact, {
        message:
          fact.count === 1
            ? `${isMany(thing, 1) ? `new ${many} go` : `a new ${many} goes`} in, but nothing says what becomes of the old ${isMany(thing, 1) ? 'ones' : 'one'}`
            : `${many} go in new, but nothing says what becomes of the old ones`,
        help: `Add ${directive('discard', thing, { count: fact.count })} where ${fact.count === 1 ? 'it comes' : 'they come'} out, or take ${'`new`'} out if the old ${fact.count === 1 ? 'one goes' : 'ones go'} back.`,
        related: traced(fact.since, thing.size),
      });
    }
  },
};
