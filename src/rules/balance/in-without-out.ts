import type { Verb } from '../../../schemas/directives.ts';
import { fluidStories } from '../reading/fluid-stories.ts';
import type { Draft, Examined, Fact, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { samePlace } from '../telling/related.ts';
import { traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { alreadyWords } from '../wording/spread.ts';
import { are, type Thing, theyAre, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'in-without-out',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('already-done')) {
      if (fact.direction !== 'back' || isTopUp(examined, fact)) continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} to be ${verbWords[fact.verb].done} here, but ${are(thing)} ${alreadyWords(fact.state)}`,
        help: `Take this action out${leadIn(fact.verb, thing)}.`,
        related: traced(fact.since, thing.size),
      });
    }
  },
};

/** What a line has lost when it was opened is made up, though the circuit was never drained. */
function isTopUp(
  examined: Examined,
  { verb, procedure, item, place }: Extract<Fact, { kind: 'already-done' }>,
): boolean {
  if (verb !== 'fill') return false;
  return fluidStories(examined).some(
    (story) =>
      story.procedure === procedure &&
      story.circuit.id === item &&
      story.events.some(
        (event, i) =>
          event.does === 'lose' &&
          story.events[i + 1]?.does === 'fill' &&
          samePlace(story.events[i + 1]?.place ?? event.place, place),
      ),
  );
}

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
