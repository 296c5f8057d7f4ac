import { printCondition, resolveCondition } from '../applicability/index.ts';
import type { Item, StatefulItem } from '../catalogue/index.ts';
import { type Account, type Counts, spread, tally } from './account.ts';
import { itemStates, type Move, moveOf, verbsFor } from './kinds.ts';
import { movePieces } from './move-pieces.ts';
import { isPartFill } from './part-fill.ts';
import { isStateful } from './precedence.ts';
import type { Act } from './program.ts';
import { type Run, subjectOf } from './run.ts';
import { relieve, settle } from './settle.ts';
import { isEarlierStage } from './stages.ts';

/** Does one action: tests whether it can be said of the item, then moves the pieces of each of its accounts. */
export function act(run: Run, op: Act): void {
  const { action } = op;
  const { space, presence } = run.setting;
  const item = run.linked.item(action.item);
  if (item === undefined) return;
  const fitting = verbsFor(item.kind);
  if (!fitting.includes(action.verb)) {
    const told = { verb: action.verb, itemKind: item.kind, fitting };
    run.tellAt(op, item, op.under, { kind: 'verb-unfit', ...told });
    return;
  }
  tellAbsent(run, op, item);
  if (!isStateful(item)) return;
  const present = { ...op, under: space.and(op.under, presence(item)) };
  if (action.verb === 'relieve') relieve(run, present, item);
  else {
    if (action.verb === 'check' && action.to !== undefined)
      tellUnlike(run, present, item, action.to.id);
    moveAll(run, present, item);
  }
}

function moveAll(run: Run, op: Act, item: StatefulItem): void {
  const { action } = op;
  const partly = action.amount !== undefined || isEarlierStage(action, item);
  const move = moveOf(action.verb, item, { isNew: action.isNew, partly, to: action.to?.id });
  if (move === undefined || !itemStates(item).includes(move.to)) return;
  for (const account of accountsOf(run, op, item)) {
    for (const part of byFilling(run, op, account, move)) {
      const moving = movePieces(run, part.op, account, part.move);
      if (moving !== run.setting.space.none) settle(run, part.op, account, moving);
    }
  }
}

const accountsOf = (run: Run, { action }: Act, item: StatefulItem): readonly Account[] =>
  run.setting.accounts.of(
    item,
    action.each.map((ref) => ref.id),
  );

/** An empty circuit that gets less than it holds is still short of some; one that lost a part is made up. */
function byFilling(
  run: Run,
  op: Act,
  account: Account,
  move: Move,
): readonly { op: Act; move: Move }[] {
  if (!isPartFill(op.action, account.item)) return [{ op, move }];
  const { space } = run.setting;
  const isEmpty = (counts: Counts): boolean => tally(account, counts, ['drained']) > 0;
  const empty = run.books
    .where(account, op.under, isEmpty)
    .reduce((set, standing) => space.or(set, standing.set), space.none);
  return [
    { op: { ...op, under: empty }, move: { ...move, from: ['drained'], to: 'part-drained' } },
    { op: { ...op, under: space.minus(op.under, empty) }, move },
  ];
}

/** Tells of variants that do not have the item. */
function tellAbsent(run: Run, op: Act, item: Item): void {
  const { space, presence } = run.setting;
  const without = space.minus(op.under, presence(item));
  if (item.when === undefined || without === space.none) return;
  const { verb, when } = op.action;
  // A condition with a name that the manual does not have is told already, and says nothing of variants.
  const isDoubtful =
    when !== undefined &&
    resolveCondition(space, when.condition).problems.some(({ code }) => !isAboutTruth(code));
  if (isDoubtful) return;
  const told = { verb, itemWhen: printCondition(item.when), byPlace: item.placeOf('when') };
  run.tellAt(op, item, without, { kind: 'item-absent', ...told });
}

/** A condition that holds always or never is understood all the same. */
const isAboutTruth = (code: string): boolean => code === 'always-true' || code === 'never-true';

/** `:check{item=… to=…}` says in which state the item is by now; tells of where it is in another one. */
function tellUnlike(run: Run, op: Act, item: StatefulItem, state: string): void {
  const { verb } = op.action;
  for (const account of accountsOf(run, op, item)) {
    const isUnlike = (counts: Counts): boolean => tally(account, counts, [state]) < account.size;
    for (const { set, value } of run.books.where(account, op.under, isUnlike)) {
      const since = run.journal.last(account, set);
      const told = { verb, state: spread(account, value), from: [state], since };
      run.tellAt(op, subjectOf(account), set, { kind: 'state-unfit', ...told });
    }
  }
}
