import type { Verb } from '../../../schemas/directives.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { spreadWords } from '../wording/spread.ts';
import { type Thing, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'in-without-out',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('already-done')) {
      if (fact.direction !== 'back') continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} to be ${verbWords[fact.verb].done} here, but ${thing.size === 1 ? 'is' : 'are'} ${spreadWords(fact.state)} already`,
        help: `Take this action out${leadIn(fact.verb, thing)}.`,
        related: traced(fact.since, thing.size),
      });
    }
  },
};

/** What must have been done for an action to bring something back. */
const before: Partial<Record<Verb, Verb>> = {
  install: 'remove',
  return: 'set-aside',
  connect: 'disconnect',
  fill: 'drain',
  restore: 'isolate',
  withdraw: 'fit',
  tighten: 'loosen',
  torque: 'loosen',
};

function leadIn(verb: Verb, thing: Thing): string {
  const first = before[verb];
  return first === undefined ? '' : `, or add ${directive(first, thing)} before it`;
}
