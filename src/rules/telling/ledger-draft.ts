import type { Fix, Related } from '../../../schemas/finding.ts';
import { factKey, type LedgerFact } from '../../ledger/index.ts';
import type { Draft, Examined } from '../rule.ts';
import { code, sentence } from '../wording/lists.ts';
import { factsOf } from './json.ts';
import { related, without } from './related.ts';
import { writtenStep } from './written-step.ts';

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
  const where = inside === undefined ? [] : [related(inside.place, 'inside it, here')];
  const written = writtenStep(examined, fact);
  return {
    place: fact.place,
    procedure: fact.procedure,
    item: fact.item === '' ? undefined : fact.item,
    when: fact.when,
    message:
      sentence(told.message) +
      instance +
      (title === undefined ? '' : `, inside “${title}”`) +
      (written === undefined ? '' : `, in the written-out step ${written}`),
    data: factsOf(fact, ['procedure', 'place', 'when', 'inside', 'origin']),
    related: without(
      fact.place,
      [...where, ...(told.related ?? [])].map((one) => withTitle(examined, fact, one)),
    ),
    help: written === undefined ? told.help : `${told.help ?? ''} ${ownStep(fact.item)}`.trim(),
    fix: told.fix,
    fact: fact.origin === undefined ? factKey(fact) : undefined,
  };
}

/** A second place in the text of another procedure says in which. */
function withTitle(examined: Examined, { place }: LedgerFact, one: Related): Related {
  if (one.file === place.file) return one;
  const other = examined.linked.outlines.byFile.get(one.file);
  if (other === undefined) return one;
  return { ...one, label: `${one.label}, in “${other.title}”` };
}

const ownStep = (item: string): string =>
  `Or write a step of your own in the ${code(':::reverse')}, with ${code(`::step{at=${item}}`)} to place it, or leave the item out with ${code(`except=${item}`)} and bring it back where it belongs.`;

export function titleOf(examined: Examined, procedure: string): string {
  return examined.linked.procedures.get(procedure)?.procedure.front.title ?? procedure;
}
