import type { Fix } from '../../../schemas/finding.ts';
import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { traced } from '../telling/trace.ts';
import { directive } from '../wording/directive.ts';
import { isMany, itIs, the, thingOf } from '../wording/thing.ts';

type OldBack = Extract<LedgerFact, { kind: 'old-back' }>;

export const rule: Rule = {
  id: 'old-part-back',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('old-back')) {
      const thing = thingOf(examined, fact.procedure, fact.item);
      const goes = isMany(thing, fact.count) ? 'go' : 'goes';
      const why = fact.singleUse ? 'made to be used once' : 'thrown away before';
      yield ledgerDraft(examined, fact, {
        message: `${the(thing, fact.count)} ${goes} back in, though ${itIs(thing, fact.count)} ${why}`,
        help: `Write ${directive('install', thing, { count: fact.count, isNew: true })} to put in a new one.`,
        related: traced(fact.since, thing.size),
        fix: fact.inside === undefined ? addNew(examined, fact) : undefined,
      });
    }
  },
};

/** Puts `new` before the closing brace of the action. */
function addNew(examined: Examined, { place, verb }: OldBack): Fix | undefined {
  const written = examined.text(place.file).slice(place.start.offset, place.end.offset);
  if (verb !== 'install' || !written.startsWith(':install') || !written.endsWith('}'))
    return undefined;
  const at = place.end.offset - 1;
  return {
    kind: 'suggestion',
    title: 'Put in a new one',
    edits: [{ file: place.file, start: at, end: at, text: ' new' }],
  };
}
