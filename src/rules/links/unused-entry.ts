import type { Item } from '../../catalogue/index.ts';
import { losesProcedures } from '../reading/lost-procedures.ts';
import { namedItems, partakers } from '../reading/named-items.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { kindWord } from '../wording/kinds.ts';
import { code, sentence } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unused-entry',
  family: 'links',
  level: 'note',
  *check(examined): Generator<Draft> {
    if (losesProcedures(examined)) return;
    const named = namedItems(examined.linked.procedures.values());
    const takesPart = partakers(examined.linked.procedures.values());
    for (const item of entriesOf(examined)) {
      if (named.has(item) || takesPart.has(item)) continue;
      yield {
        place: item.place,
        item: item.id,
        message: sentence(
          `no procedure uses ${code(item.id)}, ${kindWord(item.kind)} of the catalogue`,
        ),
        data: { id: item.id, kind: item.kind },
        help: 'Write the procedure that needs it, or take the entry out.',
      };
    }
  },
};

/** Entries of the machines that have procedures, and those in front matter. */
function entriesOf({ linked }: Examined): ReadonlySet<Item> {
  const entries = new Set<Item>();
  for (const one of linked.procedures.values()) {
    for (const item of one.catalogue.items.values()) entries.add(item);
  }
  return entries;
}
