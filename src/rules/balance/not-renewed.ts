import { halfRenewed, renewedTogether } from '../reading/renewals.ts';
import type { Draft, Rule } from '../rule.ts';
import { declared } from '../telling/trace.ts';
import { code, sentence } from '../wording/lists.ts';
import { the, theyAre, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'not-renewed',
  family: 'balance',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { procedure, done, item, partner, unless } of halfRenewed(examined)) {
      const other = thing(partner.id, partner);
      const index = item['renew-with'].indexOf(partner.id);
      yield {
        place: done.place,
        procedure: procedure.procedure.id,
        item: partner.id,
        message: sentence(
          `${the(thing(item.id, item))} ${item.count === 1 ? 'comes' : 'come'} in new here, but ${theyAre(other)} not renewed with ${item.count === 1 ? 'it' : 'them'}`,
        ),
        data: { item: item.id, with: partner.id },
        related: [declared(item.placeOf(`renew-with.${index}`), 'what is renewed with it')],
        help: `Put in a new one as well, with ${code(`:replace{item=${partner.id}}`)} or ${code(`:install{item=${partner.id} new}`)}.`,
        unless: [unless],
      };
    }
  },
  settles: renewedTogether,
};
