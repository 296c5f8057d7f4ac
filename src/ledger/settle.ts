import type { VariantSet } from '../applicability/index.ts';
import type { Connection, StatefulItem } from '../catalogue/index.ts';
import { type Account, type Counts, countsOf, tally } from './account.ts';
import type { Move } from './kinds.ts';
import { onMachine } from './on-machine.ts';
import type { Act } from './program.ts';
import { awayCount } from './requirements.ts';
import type { Run } from './run.ts';
import { toldKey } from './told-key.ts';

/** What a move does to other accounts: air gets into an opened line, a full circuit comes under pressure. */
export function settle(run: Run, op: Act, account: Account, moving: VariantSet): void {
  const { item } = account;
  if (item.kind === 'connection' && op.action.verb === 'disconnect')
    letAirIn(run, op, item, moving);
  if (item.kind !== 'circuit') return;
  const isFull = (counts: Counts): boolean => tally(account, counts, ['full']) > 0;
  const pressure = run.setting.accounts.pressureOf(item);
  for (const { set } of run.books.where(account, moving, isFull))
    put(run, op, pressure, set, 'pressurised');
}

/** Takes the pressure off a circuit. */
export function relieve(run: Run, op: Act, item: StatefulItem): void {
  put(run, op, run.setting.accounts.pressureOf(item), op.under, 'relieved');
}

/** A circuit that must be bled is no longer ready when one of its lines has been open. */
function letAirIn(run: Run, op: Act, item: Connection, under: VariantSet): void {
  const circuit = item.circuit === undefined ? undefined : run.linked.item(item.circuit);
  if (circuit?.kind !== 'circuit' || circuit.bleed === undefined) return;
  const { accounts, presence, space } = run.setting;
  const there = space.and(under, presence(circuit));
  for (const account of accounts.of(circuit)) {
    const isFull = (counts: Counts): boolean => tally(account, counts, ['full']) > 0;
    for (const { set } of run.books.where(account, there, isFull))
      put(run, op, account, set, 'filled');
  }
}

/** Brings an account that counts one piece into a state, with the operation to blame for it. */
function put(run: Run, op: Act, account: Account, under: VariantSet, to: string): void {
  run.books.change(account, under, (counts) => countsOf(account, to) ?? counts);
  run.journal.add({ account, verb: op.action.verb, under, op, moved: 1, to });
}

/** What a part closes over will find it in the way when it comes back: one fault, told at the closing. */
export function closeOver(run: Run, account: Account, move: Move, under: VariantSet): void {
  const { item } = account;
  if (item.kind !== 'part' || move.direction !== 'back') return;
  const { accounts, presence, space } = run.setting;
  for (const over of run.precedence.behind(item).flatMap((one) => accounts.of(one))) {
    const there = space.and(onMachine(run, item, under), presence(over.item));
    const isAway = (counts: Counts): boolean => awayCount(over, counts) > 0;
    const key = toldKey(run, 'blocked', over.item, over.instance);
    for (const { set } of run.books.where(over, there, isAway))
      run.journal.untold(account, key, set);
  }
}
