import type { LinkedProcedure } from '../link/index.ts';
import { catalogueFacts } from './catalogue-facts.ts';
import type { Fact } from './fact.ts';
import { manualFacts } from './manual-facts.ts';
import type { ManualPair } from './manual-pair.ts';
import { procedureFacts } from './procedure-facts.ts';
import type { Reach } from './reach.ts';

/** Everything that changed: of the manual, of its catalogue, of its procedures by id. */
export function allFacts(
  pair: ManualPair,
  reach: { readonly before: Reach; readonly after: Reach },
): readonly Fact[] {
  const { procedures, conditions, namesIn } = pair;
  const inOrder = procedures.pairs.toSorted(([, a], [, b]) =>
    a.procedure.id < b.procedure.id ? -1 : 1,
  );
  return [
    ...manualFacts(pair, reach),
    ...catalogueFacts(pair, reach.before, reach.after),
    ...procedures.gone.map(
      (one): Fact => ({
        ...whole(one),
        before: one.procedure.front.title,
        places: { before: one.procedure.placeOf('procedure') },
        touches: others(reach.before, one),
      }),
    ),
    ...procedures.fresh.map(
      (one): Fact => ({
        ...whole(one),
        after: one.procedure.front.title,
        places: { after: one.procedure.placeOf('procedure') },
        touches: others(reach.after, one),
      }),
    ),
    ...inOrder.flatMap(([before, after]) =>
      procedureFacts({ before, after, names: namesIn(before), conditions }),
    ),
  ];
}

const whole = ({ procedure: { id } }: LinkedProcedure) =>
  ({ kind: 'procedure', procedure: id }) as const;

const others = (reach: Reach, one: LinkedProcedure): Fact['touches'] =>
  reach.of([one]).filter(({ procedure }) => procedure !== one.procedure.id);
