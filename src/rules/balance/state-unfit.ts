import type { Verb } from '../../../schemas/directives.ts';
import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { oneOf, sentence } from '../wording/lists.ts';
import { alreadyWords, spreadWords } from '../wording/spread.ts';
import { stateWord } from '../wording/states.ts';
import { are, itIs, the, them, theyAre, thingOf } from '../wording/thing.ts';
import { orderTo, verbWords } from '../wording/verbs.ts';

type Unfit = Extract<LedgerFact, { kind: 'state-unfit' }>;

export const rule: Rule = {
  id: 'state-unfit',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('state-unfit')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const first = firstDone(fact);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} here: ${itIs(thing)} ${first === 'remove' ? 'still ' : ''}${spreadWords(fact.state)}, not ${oneOf(fact.from.map(stateWord))}`,
        help:
          first === undefined
            ? 'Add the action that is missing before this one, or take this one out.'
            : `${sentence(orderTo(first, them(thing)))} first with ${directive(first, thing)}, or take this action out.`,
        related: traced(fact.since, thing.size),
      });
    }
    for (const fact of examined.facts('already-done')) {
      if (fact.direction !== 'within') continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} to be ${verbWords[fact.verb].done} here, but ${are(thing)} ${alreadyWords(fact.state)}`,
        help: 'Take this action out.',
        related: traced(fact.since, thing.size),
      });
    }
  },
};

/** Of the states in which pieces are and should be, the action that leads from one to the other. */
const between: readonly (readonly [is: string, should: string, verb: Verb])[] = [
  ['in', 'out', 'remove'],
  ['tight', 'out', 'remove'],
  ['snug', 'out', 'remove'],
  ['loose', 'out', 'remove'],
  ['capped', 'open', 'uncap'],
  ['made', 'open', 'disconnect'],
  ['joined', 'open', 'disconnect'],
  ['drained', 'filled', 'fill'],
];

function firstDone({ state, from, verb }: Unfit): Verb | undefined {
  if (verb === 'check') return undefined;
  const ways = state.map(([is]) =>
    between.find(([at, should]) => at === is && from.includes(should)),
  );
  const [first] = ways;
  return first !== undefined && ways.every((way) => way?.[2] === first[2]) ? first[2] : undefined;
}
