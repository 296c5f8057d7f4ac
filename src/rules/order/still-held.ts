import type { Item } from '../../catalogue/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { declared, traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { countIn } from '../wording/spread.ts';
import { counted, isMany, someAre, type Thing, the, them, thingOf } from '../wording/thing.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'still-held',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('still-held')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const by = thingOf(examined, fact.procedure, fact.by);
      const count = countIn(fact.state, holdingStates(by.item));
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} yet: ${holders(by, count)} still ${isMany(by, count) ? 'hold' : 'holds'} ${them(thing)}`,
        help: `Add ${directive(freeing(by.item), by)} before this, or move this after it.`,
        related: [declared(fact.byPlace, 'what it holds'), ...traced(fact.since, by.size)],
      });
    }
    for (const fact of examined.facts('still-connected')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const by = thingOf(examined, fact.procedure, fact.by);
      const count = countIn(fact.state, ['made', 'joined']);
      yield ledgerDraft(examined, fact, {
        message: `${the(thing)} cannot be ${verbWords[fact.verb].done} yet: ${someAre(by, count)} still connected`,
        help: `Add ${directive('disconnect', by)} before this, or move this after it.`,
        related: [declared(fact.byPlace, 'what it belongs to'), ...traced(fact.since, by.size)],
      });
    }
  },
};

/** "the guard screw", "1 anvil bolt" of several, "8 anvil bolts" */
function holders(by: Thing, count: number): string {
  if (by.size <= 1) return the(by);
  return count === 1 && by.item !== undefined ? `1 ${counted(by, 1)}` : counted(by, count);
}

const isFreedLoose = (item: Item | undefined): boolean =>
  item?.kind === 'fastener' && item['lets-go-when'] === 'loose';

const holdingStates = (item: Item | undefined): readonly string[] =>
  isFreedLoose(item) ? ['tight', 'snug'] : ['tight', 'snug', 'loose'];

const freeing = (item: Item | undefined): 'loosen' | 'remove' =>
  isFreedLoose(item) ? 'loosen' : 'remove';
