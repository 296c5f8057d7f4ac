import { keepLedger, type LedgerFact } from '../../src/ledger/index.ts';
import type { LinkedManual } from '../../src/link/index.ts';
import { linkedFrom, procedureText } from './manual-from.ts';
import type { Piece } from './script.ts';

export type States = Readonly<Record<string, string | Readonly<Record<string, number>>>>;

/** A procedure that balances: it starts and leaves the machine as its front matter says. */
export interface CleanJob {
  readonly id: string;
  readonly text: string;
  readonly leaves: States;
}

/** The job with `leaves` set to what it really leaves; undefined where that does not make it balance. */
export function cleanJob(
  id: string,
  pieces: readonly Piece[],
  starts: States,
  texts: Readonly<Record<string, string>>,
): CleanJob | undefined {
  const first = factsOf(linkedWith(id, procedureText(id, pieces, { starts }), texts), id);
  const leaves: Record<string, Readonly<Record<string, number>>> = {};
  for (const fact of first) {
    if (fact.kind !== 'not-home' || fact.when !== undefined || fact.instance !== undefined)
      return undefined;
    leaves[fact.item] = Object.fromEntries(fact.state);
  }
  const text = procedureText(id, pieces, { starts, leaves });
  return factsOf(linkedWith(id, text, texts), id).length === 0 ? { id, text, leaves } : undefined;
}

const linkedWith = (id: string, text: string, texts: Readonly<Record<string, string>>) =>
  linkedFrom({ ...texts, [`procedures/${id}.md`]: text });

const factsOf = (manual: LinkedManual, id: string): readonly LedgerFact[] =>
  keepLedger(manual).filter(({ procedure }) => procedure === id);
