import { limitedReadings } from '../reading/readings.ts';
import type { Draft, Rule } from '../rule.ts';
import { allOf, code, oneOf, sentence } from '../wording/lists.ts';
import { isMany, the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'limit-unsaid',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one: linked } of examined.subjects) {
      for (const { action, item, limit } of limitedReadings(linked)) {
        if (limit !== undefined || action.limit !== undefined || action.value !== undefined)
          continue;
        const one = thing(item.id, item);
        const names = item.limits.flatMap(({ name }) => name ?? []);
        yield {
          place: action.place,
          procedure,
          item: item.id,
          message: sentence(
            `${the(one)} ${isMany(one, one.size) ? 'have' : 'has'} the limits ${allOf(names)}, and this does not say which is measured`,
          ),
          data: { limits: names },
          help: `Add ${oneOf(names.map((name) => code(`limit=${name}`)))}.`,
        };
      }
    }
  },
};
