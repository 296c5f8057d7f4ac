import { type LinkedManual, type LinkedProcedure, sectionsFrom } from '../link/index.ts';
import type { Ref, Section } from '../syntax/index.ts';
import { performIn } from './perform.ts';
import type { Op, PerformOp } from './program.ts';
import { rerun } from './rerun.ts';
import type { Run } from './run.ts';
import type { Summary } from './summary.ts';

/** Analyses procedures on demand, each once; a procedure that performs itself is told as the chain. */
export class Summaries {
  readonly #manual: LinkedManual;
  readonly #analyse: (linked: LinkedProcedure) => Summary;
  readonly #done = new Map<LinkedProcedure, Summary>();
  readonly #under: { readonly linked: LinkedProcedure; place: Op['place'] }[] = [];
  readonly #parts: {
    linked: LinkedProcedure;
    section: Section;
    place: Op['place'];
  }[] = [];

  constructor(manual: LinkedManual, analyse: (linked: LinkedProcedure) => Summary) {
    this.#manual = manual;
    this.#analyse = analyse;
  }

  of(linked: LinkedProcedure): Summary {
    let summary = this.#done.get(linked);
    if (summary === undefined) {
      summary = this.within(linked, () => this.#analyse(linked));
      this.#done.set(linked, summary);
    }
    return summary;
  }

  /** Does something while a procedure is under way, so that it is known when it leads back to itself. */
  within<T>(linked: LinkedProcedure, work: () => T): T {
    this.#under.push({ linked, place: linked.procedure.place });
    const result = work();
    this.#under.pop();
    return result;
  }

  perform(run: Run, op: PerformOp): void {
    const callee = this.#manual.procedures.get(op.perform.procedure.id);
    if (callee === undefined) {
      run.doubt(op.under);
      return;
    }
    const current = this.#under.at(-1);
    if (current !== undefined && run.linked === current.linked) current.place = op.place;
    if (op.perform.part !== undefined) this.#performPart(run, op, callee, op.perform.part);
    else {
      const start = this.#under.findIndex(({ linked }) => linked === callee);
      if (start >= 0) tellCycle(run, op, callee, this.#under.slice(start));
      else {
        const summary = this.of(callee);
        // Its contract speaks of the instances in its text, so that at another one its steps are gone through.
        this.within(callee, () =>
          op.perform.each === undefined
            ? performIn(run, op, summary)
            : rerun(run, op, callee, callee.procedure.sections, summary.facts),
        );
      }
    }
  }

  /** A section always runs on the caller's books; one that leads back to itself is a cycle. */
  #performPart(run: Run, op: PerformOp, callee: LinkedProcedure, part: Ref): void {
    const section = callee.section(part);
    if (section === undefined) {
      run.doubt(op.under);
      return;
    }
    const start = this.#parts.findIndex((one) => one.section === section);
    if (start >= 0) {
      tellCycle(run, op, callee, this.#parts.slice(start));
      return;
    }
    const isUnderWay = this.#under.some(({ linked }) => linked === callee);
    const told = isUnderWay ? [] : this.of(callee).facts;
    this.#parts.push({ linked: callee, section, place: op.place });
    rerun(run, op, callee, sectionsFrom(callee, section), told);
    this.#parts.pop();
  }
}

function tellCycle(
  run: Run,
  op: PerformOp,
  callee: LinkedProcedure,
  chain: readonly {
    readonly linked: LinkedProcedure;
    readonly place: Op['place'];
  }[],
): void {
  run.doubt(op.under);
  run.facts.push({
    kind: 'perform-cycle',
    procedure: run.linked.procedure.id,
    place: op.place,
    item: callee.procedure.id,
    when: undefined,
    chain: chain.map(({ linked, place }) => ({
      procedure: linked.procedure.id,
      place,
    })),
  });
}
