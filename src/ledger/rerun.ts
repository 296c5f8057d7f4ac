import type { LinkedProcedure } from '../link/index.ts';
import type { Section } from '../syntax/index.ts';
import { aimedAt } from './aimed-at.ts';
import type { LedgerFact } from './facts.ts';
import { type PerformOp, programOf } from './program.ts';
import { Run } from './run.ts';
import { walk } from './walk.ts';

/** Runs sections of a procedure on the caller's books; what is told of it anyway is not told again. */
export function rerun(
  run: Run,
  op: PerformOp,
  linked: LinkedProcedure,
  sections: readonly Section[],
  told: readonly LedgerFact[],
): void {
  const inner = new Run(run.setting, linked, op.under, run.books, run.journal);
  const program = programOf(linked, sections, run.setting.space, op.under);
  const { top, section, via = op.place } = op;
  inner.doubt(run.doubtful);
  const { each } = op.perform;
  const aimed = each === undefined ? program : program.map((one) => aimedAt(one, each, linked));
  walk(
    inner,
    aimed.map((one) => ({ ...one, step: op.step + one.step, top, section, via })),
  );
  run.doubt(inner.doubtful);
  const known = new Set(told.map(keyOf));
  for (const fact of inner.facts) {
    if (known.has(keyOf(fact))) continue;
    const inside = fact.inside ?? {
      procedure: fact.procedure,
      place: fact.place,
    };
    const set = inner.setOf(fact);
    const when = run.when(set);
    run.tell(
      {
        ...fact,
        when,
        procedure: run.linked.procedure.id,
        place: op.place,
        inside,
      },
      set,
    );
  }
}

function keyOf(fact: LedgerFact): string {
  return [fact.kind, fact.item, fact.place.file, fact.place.start.offset].join(' ');
}
