import { entryKey } from '../reading/entry-key.ts';
import { lost, lostProcedures } from '../reading/lost-procedures.ts';
import { namedByEntries, usedBy } from '../reading/named-items.ts';
import type { Draft, Rule } from '../rule.ts';
import { kindWord } from '../wording/kinds.ts';
import { code, sentence } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unused-entry',
  family: 'links',
  level: 'note',
  *check({ entries, subjects }): Generator<Draft> {
    const own = new Set(subjects.map(({ one }) => one.procedure.file));
    for (const item of entries) {
      const { file } = item.place;
      yield {
        place: item.place,
        item: item.id,
        message: sentence(
          `no procedure uses ${code(item.id)}, ${kindWord(item.kind)} of the catalogue`,
        ),
        data: { id: item.id, kind: item.kind },
        help: 'Write the procedure that needs it, or take the entry out.',
        unless: [lost, entryKey(item)],
        // Of a machine that nobody has written a procedure for yet, nothing is used.
        onlyIf: own.has(file) ? undefined : procedureOf(file),
      };
    }
  },
  *settles(examined): Generator<string> {
    yield* lostProcedures(examined);
    for (const item of namedByEntries(examined)) yield entryKey(item);
    for (const { one } of examined.subjects) {
      yield procedureOf(one.catalogue.file);
      for (const item of usedBy(one)) yield entryKey(item);
    }
  },
};

const procedureOf = (file: string): string => `a procedure for ${file}`;
