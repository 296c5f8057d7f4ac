import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { spreadWords } from '../wording/spread.ts';
import { type Thing, the, them, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

type Blocked = Extract<LedgerFact, { kind: 'blocked' }>;

export const rule: Rule = {
  id: 'blocked',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('blocked')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const by = thingOf(examined, fact.procedure, fact.by);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} here: ${theyAre(by)} in front of ${them(thing)} and still ${spreadWords(fact.state)}`,
        help: help(fact, by),
        related: [declared(fact.byPlace, 'what stands in front'), ...traced(fact.since, by.size)],
      });
    }
  },
};

function help({ direction }: Blocked, by: Thing): string {
  if (direction === 'back') return `Move this before the step that puts ${the(by)} back.`;
  const verb = by.item?.kind === 'connection' ? 'disconnect' : 'remove';
  return `Add ${directive(verb, by)} before this, or move this after it.`;
}
