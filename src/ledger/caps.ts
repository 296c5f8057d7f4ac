import type { LedgerFact } from './facts.ts';
import type { Entry } from './journal.ts';
import type { Run } from './run.ts';

/** Connections to be capped when open that stay open past the step after the one that opened them. */
export function uncapped(run: Run): readonly LedgerFact[] {
  const facts: LedgerFact[] = [];
  for (const account of run.journal.accounts()) {
    const { item } = account;
    if (item.kind !== 'connection' || !item['cap-when-open']) continue;
    const entries = run.journal.entries(account, run.scope);
    entries.forEach((entry, i) => {
      if (entry.verb !== 'disconnect') return;
      const { set: left, connected } = leftOpen(run, entry, entries.slice(i + 1));
      const set = run.setting.space.minus(left, run.doubtful);
      if (set === run.setting.space.none) return;
      const { place, via } = entry.op;
      const fact: LedgerFact = {
        kind: 'uncapped',
        procedure: run.linked.procedure.id,
        place: via ?? place,
        ...(via !== undefined && { origin: place }),
        item: item.id,
        when: run.when(set),
        verb: entry.verb,
        byPlace: item.placeOf('cap-when-open'),
        connectedAt: connected?.op.place,
      };
      facts.push(fact);
      run.keep(fact, set);
    });
  }
  return facts;
}

function leftOpen(
  run: Run,
  opened: Entry,
  later: readonly Entry[],
): { set: Entry['under']; connected: Entry | undefined } {
  const { space } = run.setting;
  let pending = opened.under;
  let set = space.none;
  for (const entry of later) {
    // Opened again before it was capped.
    const done = space.and(pending, entry.under);
    if (entry.verb === 'disconnect') set = space.or(set, done);
    else set = space.or(set, space.and(done, run.journal.beyondNextStep(opened, entry)));
    pending = space.minus(pending, done);
  }
  set = space.or(set, pending);
  return { set, connected: later.find((entry) => entry.verb === 'connect') };
}
