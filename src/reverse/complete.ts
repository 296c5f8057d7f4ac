import type { Edit } from '../../schemas/finding.ts';
import type { VariantSet } from '../applicability/index.ts';
import { expectedAtEnd, type Ledger, openLedger, type Run } from '../ledger/index.ts';
import { allSteps, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import type { Perform, Step } from '../syntax/index.ts';
import { insertionsIn } from './insert-steps.ts';
import type { Undo } from './undo.ts';
import { undoBooks } from './undo-books.ts';
import { stepsOf, type WrittenStep } from './undo-text.ts';

/** Steps that are missing before everything is where it should be, and the edits that write them in. */
export interface Completion {
  readonly steps: readonly WrittenStep[];
  readonly edits: readonly Edit[];
}

/** Finds what is missing from procedures of a manual whose reverses are written out. */
export class Completer {
  readonly #manual: LinkedManual;
  #ledger: Ledger | undefined;

  constructor(manual: LinkedManual) {
    this.#manual = manual;
  }

  /** All that is missing, or what brings one item back; undefined where nothing is, or no step could. */
  complete(id: string, item?: string): Completion | undefined {
    const one = this.#manual.procedures.get(id);
    if (one === undefined) return undefined;
    this.#ledger ??= openLedger(this.#manual);
    const { run, contract } = this.#ledger.run(one);
    const undos = undoBooks(run, {
      expected: (account) => expectedAtEnd(contract, account),
      isOfInterest: () => true,
      leftAlone: (account) => item !== undefined && account.item.id !== item,
      inLots: false,
    });
    if (undos.length === 0 || !canBeTold(new Set(undos.map(({ under }) => under)), run))
      return undefined;
    const steps = stepsOf(undos, run, (perform) => this.#counterpart(perform));
    const placed = steps.map((step) => ({ step, before: placeFor(step.undos, run, one) }));
    return { steps, edits: insertionsIn(one.procedure, placed) };
  }

  #counterpart({ procedure, part }: Perform): string | undefined {
    return part === undefined ? this.#manual.outlines.counterpart(procedure.id) : undefined;
  }
}

/** Steps under more different conditions than this are no help to anybody. */
const mostConditions = 100;

/** A step whose condition nobody could read would be written as one for every machine, which is something else. */
function canBeTold(conditions: ReadonlySet<VariantSet>, { setting, scope }: Run): boolean {
  return (
    conditions.size <= mostConditions &&
    [...conditions].every((under) => setting.space.describe(under, scope) !== 'too-long')
  );
}

/**
 * The step before which things come back: the first later one that brings back what went before them.
 * Undefined for the end.
 */
function placeFor(
  undos: readonly Undo[],
  run: Run,
  { procedure }: LinkedProcedure,
): Step | undefined {
  const turn = Math.max(...undos.map((undo) => undo.turn));
  const gone = Math.max(...undos.map((undo) => lastOrder(undo, run)));
  const items = new Set(undos.map((undo) => undo.account.item));
  let first: { order: number; top: number } | undefined;
  for (const account of run.journal.accounts()) {
    if (items.has(account.item) || account.aspect === 'pressure') continue;
    const story = run.journal.entries(account, run.scope);
    const went = story[0]?.order ?? 0;
    if (went >= turn) continue;
    for (const { order, op, to, verb } of story) {
      const isBack =
        order > gone && (to === account.states[0] || verb === 'install' || verb === 'connect');
      if (isBack && (first === undefined || order < first.order)) first = { order, top: op.top };
    }
  }
  return first === undefined ? undefined : [...allSteps(procedure)][first.top - 1];
}

/** When an item last moved. */
function lastOrder({ account }: Undo, run: Run): number {
  return run.journal.entries(account, run.scope).at(-1)?.order ?? 0;
}
