import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { code, sentence } from '../wording/lists.ts';
import { isMany, type Thing, them, theyAre, thingOf } from '../wording/thing.ts';

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
        message: `${sentence(theyAre(thing))} ${what} in ${code(fact.section)}, and ${code('::reverse')} cannot know ${asked(fact.verb, thing)}`,
        data: { section: fact.section, verb: fact.verb },
        related: [related(fact.done, `${what} here`)],
        help: `Say that in a step of your own inside ${code(':::reverse')}, with ${code(`::step{at=${fact.item}}`)} in it; or write ${code(`except=${fact.item}`)}, and ${code('::reverse')} leaves ${them(thing)} to you.`,
      };
    }
  },
};

function asked(verb: string, thing: Thing): string {
  if (verb !== 'discard') return 'what the reading asks for on the way back';
  return isMany(thing, thing.size) ? 'which new ones go in' : 'which new one goes in';
}
