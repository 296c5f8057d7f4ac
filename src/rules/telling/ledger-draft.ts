import type { Fix, Related } from '../../../schemas/finding.ts';
import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Examined } from '../rule.ts';
import { sentence } from '../wording/lists.ts';
import { factsOf } from './json.ts';
import { related, without } from './related.ts';

/** The words that a rule has for a fact of the ledger. */
export interface Told {
  readonly message: string;
  readonly help?: string;
  readonly related?: readonly Related[];
  readonly fix?: Fix | undefined;
}

/** A draft from a fact of the ledger. What happens in a performed procedure is told at the perform. */
export function ledgerDraft(examined: Examined, fact: LedgerFact, told: Told): Draft {
  const inside = fact.inside;
  const title = inside && titleOf(examined, inside.procedure);
  const instance = fact.instance === undefined ? '' : ` (${fact.instance})`;
  const where = inside === undefined ? [] : [related(inside.place, `inside “${title}”, here`)];
  return {
    place: fact.place,
    procedure: fact.procedure,
    item: fact.item === '' ? undefined : fact.item,
    when: fact.when,
    message: sentence(told.message) + instance + (title === undefined ? '' : `, inside “${title}”`),
    data: factsOf(fact, ['procedure', 'place', 'when', 'inside']),
    related: without(fact.place, [...where, ...(told.related ?? [])]),
    help: told.help,
    fix: told.fix,
  };
}

export function titleOf(examined: Examined, procedure: string): string {
  return examined.linked.procedures.get(procedure)?.procedure.front.title ?? procedure;
}
