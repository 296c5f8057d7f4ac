import { type Account, fillPoints, moveOf, type Run, requirementsFor } from '../ledger/index.ts';
import type { Undo } from './undo.ts';

/**
 * Undos in the order in which the catalogue lets them be done, and where it does not mind as they stand: what
 * lies behind a part before the part, a part before what belongs to it, an aid away before what it blocks.
 */
export function inSoundOrder(undos: readonly Undo[], run: Run): readonly Undo[] {
  const before = predecessors(undos, run);
  const left = new Set(undos);
  const ordered: Undo[] = [];
  while (left.size > 0) {
    const isNext = (undo: Undo): boolean =>
      ![...(before.get(undo) ?? [])].some((other) => left.has(other));
    // What waits for itself in a ring is told of the catalogue; here it is taken as it stands.
    const next = [...left].find(isNext) ?? [...left][0];
    if (next === undefined) break;
    left.delete(next);
    ordered.push(next);
  }
  return ordered;
}

/** For each undo those that must come before it. */
function predecessors(undos: readonly Undo[], run: Run): ReadonlyMap<Undo, ReadonlySet<Undo>> {
  const before = new Map(undos.map((undo) => [undo, new Set<Undo>()]));
  const byAccount = new Map<Account, Undo[]>();
  for (const undo of undos) {
    const same = byAccount.get(undo.account) ?? [];
    for (const earlier of same) if (meet(run, earlier, undo)) before.get(undo)?.add(earlier);
    byAccount.set(undo.account, [...same, undo]);
  }
  for (const undo of undos) {
    for (const other of undos) {
      if (closes(other, undo) && meet(run, other, undo)) before.get(undo)?.add(other);
      if (letsIn(other, undo, run) && meet(run, other, undo)) before.get(other)?.add(undo);
    }
    for (const { by, isBroken, breaks } of demandsOf(undo, run)) {
      for (const other of byAccount.get(by) ?? []) {
        if (other === undo || !meet(run, other, undo)) continue;
        if (breaks(other) && !isBroken) before.get(other)?.add(undo);
        if (!breaks(other) && isBroken) before.get(undo)?.add(other);
      }
    }
  }
  return before;
}

/** What must hold of another account for an undo: whether it is broken as the work stands, and by which undos. */
interface Demand {
  readonly by: Account;
  readonly isBroken: boolean;
  breaks(other: Undo): boolean;
}

function demandsOf(undo: Undo, run: Run): readonly Demand[] {
  const { account, verb, under } = undo;
  const { accounts, precedence } = run.setting;
  const move = moveFor(undo);
  if (move === undefined) return [];
  return requirementsFor(verb, account, move, precedence(run.linked), accounts).map(
    ({ by, broken }) => ({
      by,
      isBroken: run.books.where(by, under, broken).length > 0,
      breaks: (other) => {
        const to = moveFor(other)?.to;
        return broken(by.states.map((state) => (state === to ? by.size : 0)));
      },
    }),
  );
}

const moveFor = ({ verb, account, isNew, to }: Undo) =>
  moveOf(verb, account.item, { isNew, partly: false, to });

/** A circuit is filled and bled once its drain points and hoses are shut. */
function closes({ account: { item } }: Undo, { account: { item: circuit } }: Undo): boolean {
  if (circuit.kind !== 'circuit') return false;
  const isHose = item.kind === 'connection' && item.circuit === circuit.id;
  return isHose || circuit.drain.includes(item.id);
}

/** It is filled before its fill point is shut again. */
function letsIn({ account: { item } }: Undo, { account, verb }: Undo, run: Run): boolean {
  if (verb !== 'fill' || account.item.kind !== 'circuit') return false;
  return fillPoints(account.item, run.setting.precedence(run.linked)).includes(item);
}

const meet = ({ setting: { space } }: Run, a: Undo, b: Undo): boolean =>
  space.and(a.under, b.under) !== space.none;
