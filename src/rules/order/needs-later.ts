import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'needs-later',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('needs-later')) {
      yield ledgerDraft(examined, fact, {
        message: `this step needs the step ${code(fact.needed)}, which comes later`,
        help: 'Move one of the two steps, or take the need out.',
        related: [related(fact.neededPlace, 'the step that it needs')],
      });
    }
  },
};
