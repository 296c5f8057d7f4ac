import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';
import { counted, thingOf } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'reverse-asks',
  family: 'words',
  level: 'note',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('reverse-asks')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const what = fact.verb === 'discard' ? 'thrown away' : 'measured';
      yield {
        place: fact.place,
        procedure: fact.procedure,
        item: fact.item,
        message: `The ${counted(thing, thing.size)} ${thing.size === 1 ? 'is' : 'are'} ${what} in ${code(fact.section)}, and no step can undo that`,
        data: { section: fact.section, verb: fact.verb },
        related: [related(fact.done, `${what} here`)],
        help: `Write your own step inside ${code(':::reverse')} with ${code(`::step{at=${fact.item}}`)}, or say ${code(`except=${fact.item}`)}.`,
      };
    }
  },
};
