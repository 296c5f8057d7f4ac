import type { VariantSet } from '../applicability/index.ts';
import { type Account, spread } from './account.ts';
import type { Standing } from './books.ts';
import type { Trace } from './facts.ts';
import type { Move } from './kinds.ts';
import { onMachine } from './on-machine.ts';
import { tellShutPoints } from './points-shut.ts';
import type { Act } from './program.ts';
import { type Requirement, requirementsFor } from './requirements.ts';
import type { Run, Untold } from './run.ts';
import { toldKey } from './told-key.ts';

/** Tells of what stands in the way of a move, or of what it needs and is not there. */
export function tellObstacles(
  run: Run,
  op: Act,
  account: Account,
  move: Move,
  moving: VariantSet,
): void {
  const { accounts, presence, space } = run.setting;
  const { item } = account;
  const { verb } = op.action;
  const on = onMachine(run, item, moving);
  for (const requirement of requirementsFor(verb, account, move, run.precedence, accounts)) {
    const { by, broken } = requirement;
    for (const standing of run.books.broken(by, space.and(on, presence(by.item)), broken))
      tellBroken(run, op, account, move, requirement, standing);
  }
  if (item.kind === 'circuit') tellShutPoints(run, op, item, moving);
}

function tellBroken(
  run: Run,
  op: Act,
  { item, instance }: Account,
  move: Move,
  requirement: Requirement,
  standing: Standing,
): void {
  const { by, kind } = requirement;
  // The same of the same two is told again only once the second one has moved.
  const set = run.journal.untold(by, toldKey(run, kind, item, instance), standing.set);
  if (set === run.setting.space.none) return;
  const fact = factOf(op, move, requirement, standing, run.journal.last(by, set));
  run.tellAt(op, { id: item.id }, set, fact);
}

function factOf(
  { action: { verb } }: Act,
  { direction }: Move,
  { by, kind }: Requirement,
  { value }: Standing,
  since: Trace | undefined,
): Untold {
  const { id } = by.item;
  const state = spread(by, value);
  const common = { byPlace: by.item.place, since };
  switch (kind) {
    case 'blocked':
      return { kind, verb, direction, by: id, state, ...common };
    case 'still-held':
    case 'still-connected':
      return { kind, verb, by: id, state, ...common };
    case 'closed-over':
      return { kind, verb, over: id, state, ...common };
    case 'aid-in-way':
      return { kind, verb, aid: id, ...common };
    case 'nothing-there':
      return { kind, verb, part: id, state, ...common };
    case 'under-pressure':
      return { kind, verb, circuit: id, ...common };
    case 'energy-live':
      return { kind, verb, energy: id, ...common };
    case 'fill-open':
      return { kind, point: id, state, ...common };
  }
}
