import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { counted, type Thing, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

type TooMany = Extract<LedgerFact, { kind: 'too-many' }>;

export const rule: Rule = {
  id: 'count-mismatch',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('too-many')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: message(fact, thing),
        help: `Write ${code(`qty=${fact.available}`)}, or correct the count where it differs.`,
        related: [
          ...(fact.asked > fact.size && thing.item !== undefined
            ? [declared(thing.item.place, 'the count')]
            : []),
          ...traced(fact.since, thing.size),
        ],
      });
    }
  },
};

function message({ asked, size, available, verb }: TooMany, thing: Thing): string {
  const are = asked === 1 ? 'is' : 'are';
  const asks = `${asked} ${counted(thing, asked).replace(/^\d+ /, '')} ${are} to be ${verbWords[verb].done} here`;
  if (asked > size) return `${asks}, but there ${size === 1 ? 'is' : 'are'} only ${size}`;
  return `${asks}, but only ${available} can be`;
}
