import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code, sentence } from '../wording/lists.ts';
import { isMany, the, them, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'reverse-at-unused',
  family: 'form',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('reverse-at-unused')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const come = isMany(thing, thing.size) ? 'do' : 'does';
      yield {
        place: fact.place,
        procedure: fact.procedure,
        item: fact.item,
        message: sentence(
          `${the(thing)} ${come} not come back in this ${code('::reverse')} of ${code(fact.section)}, so that a step to be done before ${them(thing)} comes last of all`,
        ),
        data: { section: fact.section },
        related: [related(fact.sectionPlace, 'the section to undo')],
        help: `Name in ${code('at=')} an item whose return this step is to go before, or take ${code(`at=${fact.item}`)} out if it is the last step.`,
      };
    }
  },
};
