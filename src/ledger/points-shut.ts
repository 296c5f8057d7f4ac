import type { VariantSet } from '../applicability/index.ts';
import type { Circuit, StatefulItem } from '../catalogue/index.ts';
import type { Counts } from './account.ts';
import type { Act } from './program.ts';
import { drainPoints, fillPoints, isOpen } from './requirements.ts';
import type { Run } from './run.ts';

/** What is drained or filled goes through one of its points at least: tells of where all are shut. */
export function tellShutPoints(run: Run, op: Act, circuit: Circuit, moving: VariantSet): void {
  const { space, accounts, presence } = run.setting;
  const { verb } = op.action;
  if (verb !== 'drain' && verb !== 'fill') return;
  const points = (verb === 'drain' ? drainPoints : fillPoints)(circuit, run.precedence);
  let shut = moving;
  for (const account of points.flatMap((point) => accounts.of(point))) {
    const there = space.and(shut, presence(account.item));
    const lets = (counts: Counts): boolean => isOpen(account, counts);
    for (const { set } of run.books.where(account, there, lets)) shut = space.minus(shut, set);
  }
  for (const { set, items } of byPresence(run, points, shut)) {
    run.tellAt(op, circuit, set, {
      kind: `${verb}-shut`,
      points: items.map((point) => point.id),
      byPlace: circuit.placeOf(verb),
    });
  }
}

interface Having {
  readonly set: VariantSet;
  readonly items: readonly StatefulItem[];
}

/** Some variants apart by which of the items they have; those that have none are left out. */
function byPresence(
  run: Run,
  items: readonly StatefulItem[],
  under: VariantSet,
): readonly Having[] {
  const { space, presence } = run.setting;
  let parts: readonly Having[] = [{ set: under, items: [] }];
  for (const item of items) {
    parts = parts.flatMap((part) => [
      { set: space.and(part.set, presence(item)), items: [...part.items, item] },
      { set: space.minus(part.set, presence(item)), items: part.items },
    ]);
  }
  return parts.filter((part) => part.set !== space.none && part.items.length > 0);
}
