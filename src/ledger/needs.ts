import type { LinkedProcedure } from '../link/index.ts';
import { allSteps, within } from '../link/index.ts';
import type { Ref, Step } from '../syntax/index.ts';
import type { LedgerFact } from './facts.ts';

/** Steps that come before what they need. Since steps are done in order, two that need each other are a cycle. */
export function checkNeeds({ procedure }: LinkedProcedure): readonly LedgerFact[] {
  const steps = [...allSteps(procedure)];
  const position = new Map<string, number>();
  steps.forEach((step, i) => {
    if (step.id !== undefined && !position.has(step.id.id)) position.set(step.id.id, i);
  });
  const facts: LedgerFact[] = [];
  steps.forEach((step, i) => {
    for (const need of needsOf(step)) {
      const at = position.get(need.id);
      const needed = at === undefined ? undefined : steps[at];
      if (at === undefined || needed?.id === undefined || at < i) continue;
      const common = {
        procedure: procedure.id,
        place: need.place,
        item: need.id,
        when: undefined,
      };
      const back = chainBack(needed, step, steps, position);
      if (back === undefined) {
        facts.push({
          ...common,
          kind: 'needs-later',
          step: step.id?.id ?? '',
          needed: need.id,
          neededPlace: needed.id.place,
        });
      } else {
        const chain = [{ step: step.id?.id ?? '', place: need.place }, ...back];
        facts.push({ ...common, kind: 'needs-cycle', chain });
      }
    }
  });
  return facts;
}

function needsOf(step: Step): readonly Ref[] {
  const blocks = [...within(step.blocks.filter((block) => block.type !== 'steps'))];
  return [...step.needs, ...blocks.flatMap((block) => (block.type === 'needs' ? block.steps : []))];
}

/** The needs that lead from one step to another, nearest first; undefined where none do. */
function chainBack(
  from: Step,
  to: Step,
  steps: readonly Step[],
  position: ReadonlyMap<string, number>,
): readonly { step: string; place: Ref['place'] }[] | undefined {
  if (from === to) return [];
  const seen = new Set([from]);
  let fringe = [
    {
      step: from,
      chain: [] as readonly { step: string; place: Ref['place'] }[],
    },
  ];
  while (fringe.length > 0) {
    const next: typeof fringe = [];
    for (const { step, chain } of fringe) {
      for (const need of needsOf(step)) {
        const needed = steps[position.get(need.id) ?? -1];
        if (needed === undefined || seen.has(needed)) continue;
        const longer = [...chain, { step: step.id?.id ?? '', place: need.place }];
        if (needed === to) return longer;
        seen.add(needed);
        next.push({ step: needed, chain: longer });
      }
    }
    fringe = next;
  }
  return undefined;
}
