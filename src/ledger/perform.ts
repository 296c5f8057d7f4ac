import type { VariantSet } from '../applicability/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import type { Ref, Section } from '../syntax/index.ts';
import { type Account, type Counts, sameCounts, spread } from './account.ts';
import type { Test } from './books.ts';
import { type Contract, expectedAtEnd, startOf } from './contract.ts';
import type { LedgerFact } from './facts.ts';
import type { Op } from './program.ts';
import { programOf } from './program.ts';
import { Run } from './run.ts';

/** What the rest of the manual needs of a procedure that has been analysed. */
export interface Summary {
  readonly linked: LinkedProcedure;
  readonly contract: Contract;
  /** Accounts that it looks at or changes. */
  readonly touched: readonly Account[];
  /** Accounts that must not be in its way, with the tests for that. */
  readonly asked: ReadonlyMap<Account, ReadonlySet<Test>>;
  readonly changed: readonly Account[];
  /** Circuits whose pressure is off in every way through it. */
  readonly relieved: readonly Account[];
  readonly facts: readonly LedgerFact[];
}

type PerformOp = Extract<Op, { type: 'perform' }>;

/**
 * Brings a performed procedure into a run. Where the machine is as the procedure was written for, its
 * contract is all that counts; otherwise its operations run on the books of the caller, and what goes wrong
 * only there is told at the `perform`.
 */
export function performIn(run: Run, op: PerformOp, summary: Summary): void {
  meetStarts(run, op, summary);
  const { space } = run.setting;
  const strange = strangeTo(run, op.under, summary);
  const { linked, facts } = summary;
  if (strange !== space.none)
    rerun(run, { ...op, under: strange }, linked, linked.procedure.sections, facts);
  const rest = space.minus(op.under, strange);
  if (rest !== space.none) apply(run, { ...op, under: rest }, summary);
}

/** A section and the deeper ones below it. */
export function sectionsFrom({ procedure }: LinkedProcedure, first: Section): readonly Section[] {
  const start = procedure.sections.indexOf(first);
  const rest = procedure.sections.slice(start + 1);
  const end = rest.findIndex((section) => section.depth <= first.depth);
  return [first, ...(end < 0 ? rest : rest.slice(0, end))];
}

/** The variants in which the machine is not as the procedure was written for, or something is in its way. */
function strangeTo(run: Run, under: VariantSet, summary: Summary): VariantSet {
  const { space, presence } = run.setting;
  const { contract, touched, asked } = summary;
  let strange = space.none;
  for (const account of touched) {
    if (account.aspect === 'pressure') continue;
    const start = startOf(contract, account);
    const there = space.and(under, presence(account.item));
    for (const { set } of run.books.where(account, there, (counts) => !sameCounts(counts, start)))
      strange = space.or(strange, set);
  }
  for (const [account, tests] of asked) {
    const start = startOf(contract, account);
    // Every test is asked of the caller's books, so that its own callers ask it too.
    for (const test of tests) {
      for (const { set } of run.books.broken(account, under, test))
        if (!test(start)) strange = space.or(strange, set);
    }
  }
  return strange;
}

/** Tells of declared starts that are not met, then goes on as if they were. */
function meetStarts(run: Run, op: PerformOp, { linked, contract }: Summary): void {
  for (const account of contract.named) {
    const start = contract.starts(account);
    if (start === undefined) continue;
    const there = run.setting.space.and(op.under, run.setting.presence(account.item));
    const unmet = run.books.where(account, there, (counts) => !sameCounts(counts, start));
    for (const { set, value } of unmet) {
      const told: LedgerFact = {
        kind: 'start-not-met',
        procedure: run.linked.procedure.id,
        place: op.place,
        item: account.item.id,
        when: run.when(set),
        callee: linked.procedure.id,
        state: spread(account, value),
        expected: spread(account, start),
        declared: linked.procedure.placeOf(`starts.${account.item.id}`),
        since: run.journal.last(account, set),
      };
      run.tell(told, set);
      run.books.change(account, set, () => start);
    }
  }
}

function apply(run: Run, op: PerformOp, { contract, changed, relieved }: Summary): void {
  for (const account of changed) {
    const end =
      account.aspect === 'pressure'
        ? pressureEnd(account, relieved)
        : expectedAtEnd(contract, account);
    run.books.change(account, op.under, () => end);
    const to = account.states[end.findIndex((n) => n > 0)] ?? '';
    const start = startOf(contract, account);
    const moved = end.reduce((sum, n, i) => sum + Math.max(0, n - (start[i] ?? 0)), 0);
    if (moved > 0) {
      run.journal.add({
        account,
        verb: 'perform',
        under: op.under,
        op,
        moved,
        to,
      });
    }
  }
}

const pressureEnd = (account: Account, relieved: readonly Account[]): Counts =>
  relieved.includes(account) ? [0, 1] : [1, 0];

/** Runs sections of a procedure on the caller's books; what is told of it anyway is not told again. */
function rerun(
  run: Run,
  op: PerformOp,
  linked: LinkedProcedure,
  sections: readonly Section[],
  told: readonly LedgerFact[],
): void {
  const inner = new Run(run.setting, linked, op.under, run.books, run.journal);
  const program = programOf(linked, sections, run.setting.space, op.under);
  const { top, section } = op;
  inner.go(program.map((one) => ({ ...one, step: op.step + one.step, top, section })));
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
    if (callee === undefined) return;
    const current = this.#under.at(-1);
    if (current !== undefined && run.linked === current.linked) current.place = op.place;
    if (op.perform.part !== undefined) this.#performPart(run, op, callee, op.perform.part);
    else {
      const start = this.#under.findIndex(({ linked }) => linked === callee);
      if (start >= 0) tellCycle(run, op, callee, this.#under.slice(start));
      else {
        const summary = this.of(callee);
        this.within(callee, () => performIn(run, op, summary));
      }
    }
  }

  /** A section always runs on the caller's books; one that leads back to itself is a cycle. */
  #performPart(run: Run, op: PerformOp, callee: LinkedProcedure, part: Ref): void {
    const section = callee.section(part);
    if (section === undefined) return;
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
