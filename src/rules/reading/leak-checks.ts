import type { Catalogue, Circuit, Item } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
import { onceFor } from './once-for.ts';
import { type Done, isWholeJob, workDone } from './work-done.ts';

/** A circuit that has been open, and that nothing checks for leaks once it is shut and full again. */
export interface Unchecked {
  readonly procedure: LinkedProcedure;
  readonly circuit: Circuit;
  readonly opened: Done;
  /** What shut or filled it last, after which the check is to be put. */
  readonly ready: Done;
}

/** In every job that is whole by itself, those of the jobs that it performs left to them. */
export function* uncheckedLeaks({ subjects, expanded }: Examined): Generator<Unchecked> {
  const work = workDone(expanded);
  for (const { expanded: procedure } of subjects) {
    if (!isWholeJob(procedure)) continue;
    for (const circuit of circuitsToCheck(procedure.catalogue)) {
      const found = uncheckedIn(work.last(procedure), circuit);
      if (found === undefined) continue;
      const { owner } = found.ready;
      if (owner.procedure.id === procedure.procedure.id || !isWholeJob(owner))
        yield { procedure, circuit, ...found };
    }
  }
}

const circuitsToCheck = onceFor(({ items }: Catalogue): readonly Circuit[] =>
  [...items.values()].filter(
    (item): item is Circuit => item.kind === 'circuit' && Boolean(item['leak-check']),
  ),
);

function uncheckedIn(
  work: readonly Done[],
  circuit: Circuit,
): Pick<Unchecked, 'opened' | 'ready'> | undefined {
  const isPoint = (item: Item): boolean =>
    circuit.drain.includes(item.id) || (item.kind === 'connection' && item.circuit === circuit.id);
  const drained = work.findLastIndex(({ action, item }) => item === circuit && isDraining(action));
  const lines = work.findLastIndex(({ action, item }) => isPoint(item) && isOpening(action, item));
  const shut = work.findLastIndex(({ action, item }) => isPoint(item) && isClosing(action, item));
  const isFill = ({ action, item }: Done): boolean => item === circuit && action.verb === 'fill';
  // A check after the first fill does: it is topped up when the machine has run, with nothing open in between.
  const filled = work.findIndex((done, i) => i > drained && isFill(done));
  const opened = work[Math.max(drained, lines)];
  if (opened === undefined || (drained >= 0 && filled < 0) || lines > shut) return undefined;
  const tight = Math.max(drained < 0 ? -1 : filled, shut);
  const ready = work[Math.max(tight, work.findLastIndex(isFill))];
  const isChecked = work.some(
    ({ action, item }, i) =>
      i > tight &&
      (action.verb === 'check' || action.verb === 'measure') &&
      (item === circuit || isPoint(item)),
  );
  return isChecked || ready === undefined ? undefined : { opened, ready };
}

const isDraining = ({ verb }: Action): boolean => verb === 'drain';

function isOpening({ verb, to }: Action, item: Item): boolean {
  if (verb === 'set') return item.kind === 'control' && to?.id !== item.home;
  return ['remove', 'loosen', 'disconnect', 'set-aside', 'replace'].includes(verb);
}

function isClosing({ verb, to }: Action, item: Item): boolean {
  if (verb === 'set') return item.kind === 'control' && to?.id === item.home;
  return ['install', 'connect', 'tighten', 'torque', 'return', 'replace'].includes(verb);
}
