import type { Place } from '../../../schemas/finding.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { ledgerDraft } from '../telling/ledger-draft.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'cycle',
  family: 'order',
  level: 'error',
  *check(examined): Generator<Draft> {
    yield* ofProcedures(examined);
    yield* ofItems(examined);
  },
};

function* ofProcedures(examined: Examined): Generator<Draft> {
  for (const fact of examined.facts('perform-cycle')) {
    const ids = fact.chain.map((link) => link.procedure);
    yield ledgerDraft(examined, fact, {
      message: `this procedure performs itself: ${round(ids)}`,
      help: 'Take one of these performs out.',
      related: fact.chain.map((link, i) =>
        related(
          link.place,
          `${code(link.procedure)} performs ${code(ids[(i + 1) % ids.length] ?? '')} here`,
        ),
      ),
    });
  }
  for (const fact of examined.facts('needs-cycle')) {
    const ids = fact.chain.map((link) => link.step);
    yield ledgerDraft(examined, fact, {
      message: `these steps need each other, so none can be first: ${round(ids)}`,
      help: 'Take one of these needs out.',
      related: fact.chain.map((link) => related(link.place, `${code(link.step)} is here`)),
    });
  }
}

function* ofItems(examined: Examined): Generator<Draft> {
  for (const fact of examined.facts('precedence-cycle')) {
    yield {
      place: fact.place,
      item: fact.chain[0]?.item,
      message: `These entries wait for each other, so none can come off first: ${round(fact.chain.map((link) => link.item))}`,
      data: factsOf(fact, ['kind']),
      related: others(fact.place, fact.chain),
      help: 'Correct `behind`, `holds` or `on` of one of them.',
    };
  }
}

const others = (place: Place, chain: readonly { readonly item: string; readonly place: Place }[]) =>
  chain
    .filter(
      (link) => link.place.start.offset !== place.start.offset || link.place.file !== place.file,
    )
    .map((link) => related(link.place, `${code(link.item)} waits here`));

/** "`a` → `b` → `a`": the way round, closed. */
function round(ids: readonly string[]): string {
  const open = ids.length > 1 && ids[0] === ids.at(-1) ? ids.slice(0, -1) : ids;
  return [...open, ...open.slice(0, 1)].map(code).join(' → ');
}
