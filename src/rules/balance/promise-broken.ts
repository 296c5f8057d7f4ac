import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { storyOf } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { spreadWords, spreadYaml } from '../wording/spread.ts';
import { them, theyAre, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'promise-broken',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('not-home')) {
      if (!fact.promised) continue;
      const thing = thingOf(examined, fact.procedure, fact.item);
      const front = examined.linked.procedures.get(fact.procedure)?.procedure;
      yield ledgerDraft(examined, fact, {
        message: `${theyAre(thing)} ${spreadWords(fact.state)} at the end, but ${code('leaves')} says ${spreadWords(fact.expected)}`,
        help: `Add the steps that bring ${them(thing)} to ${code(spreadYaml(fact.expected))}, or write ${code(`${fact.item}: ${spreadYaml(fact.state)}`)} under ${code('leaves')}.`,
        related: [
          ...(front === undefined
            ? []
            : [related(front.placeOf(`leaves.${fact.item}`), 'promised here')]),
          ...storyOf(fact.story, thing.size),
        ],
      });
    }
  },
};
