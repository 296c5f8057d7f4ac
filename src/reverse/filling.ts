import type { Verb } from '../../schemas/directives.ts';
import type { VariantSet } from '../applicability/index.ts';
import type { StatefulItem } from '../catalogue/index.ts';
import { fillPoints, isOpen, type Run } from '../ledger/index.ts';

/** What is done to a fill point before a circuit is filled, or after. */
export interface PointAction {
  readonly item: StatefulItem;
  readonly under: VariantSet;
  readonly actions: readonly {
    readonly verb: Verb;
    readonly isNew?: boolean;
    readonly to?: string | undefined;
  }[];
}

/**
 * How the fill points of a circuit are opened and shut again, for the variants in which none of them is open as the
 * work stands: of each variant the first point that it has.
 */
export function pointsToOpen(
  circuit: StatefulItem,
  under: VariantSet,
  run: Run,
): { readonly open: readonly PointAction[]; readonly shut: readonly PointAction[] } {
  const { space, accounts, presence, precedence } = run.setting;
  const points = circuit.kind === 'circuit' ? fillPoints(circuit, precedence(run.linked)) : [];
  let left = under;
  for (const account of points.flatMap((point) => accounts.of(point))) {
    const there = space.and(left, presence(account.item));
    for (const { set } of run.books.where(account, there, (counts) => isOpen(account, counts)))
      left = space.minus(left, set);
  }
  const chosen = points.flatMap((item) => {
    const set = space.and(left, presence(item));
    left = space.minus(left, set);
    return set === space.none ? [] : [{ item, under: set }];
  });
  return {
    open: chosen.map((one) => ({ ...one, actions: opening(one.item) })),
    shut: chosen.map((one) => ({ ...one, actions: shutting(one.item) })),
  };
}

function opening(item: StatefulItem): PointAction['actions'] {
  if (item.kind === 'connection') return [{ verb: 'disconnect' }];
  if (item.kind !== 'control') return [{ verb: 'remove' }];
  return [{ verb: 'set', to: item.positions.find((position) => position !== item.home) }];
}

function shutting(item: StatefulItem): PointAction['actions'] {
  const torque = 'torque' in item && item.torque !== undefined ? [{ verb: 'torque' } as const] : [];
  switch (item.kind) {
    case 'connection':
      return [{ verb: 'connect' }, ...torque];
    case 'control':
      return [{ verb: 'set', to: item.home }];
    case 'fastener': {
      const isDone = torque.length > 0 || item.tightness === 'hand-tight';
      const tighten = isDone ? torque : [{ verb: 'tighten' } as const];
      return [{ verb: 'install', isNew: item['single-use'] }, ...tighten];
    }
    default:
      return [{ verb: 'install', isNew: 'single-use' in item && item['single-use'] }];
  }
}
