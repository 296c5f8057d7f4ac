import type { Fix } from '../../../schemas/finding.ts';
import type { ItemKind } from '../../catalogue/index.ts';
import type { LedgerFact } from '../../ledger/index.ts';
import type { Draft, Examined } from '../rule.ts';
import { code } from '../wording/lists.ts';
import { countIn, spreadYaml } from '../wording/spread.ts';
import { type Thing, thingOf } from '../wording/thing.ts';
import { ledgerDraft } from './ledger-draft.ts';
import { related } from './related.ts';
import { storyOf } from './trace.ts';

type NotHome = Extract<LedgerFact, { kind: 'not-home' }>;

/** An item that is not where it should be at the end, with the pieces that a rule is about. */
export interface Ending {
  readonly fact: NotHome;
  readonly thing: Thing;
  readonly count: number;
}

/** Items of some kind that end, unpromised, with pieces in some states. */
export function* endingsIn(
  examined: Examined,
  kinds: readonly ItemKind[],
  states: readonly string[],
  fits: (fact: NotHome) => boolean = () => true,
): Generator<Ending> {
  for (const fact of examined.facts('not-home')) {
    if (fact.promised || !kinds.some((kind) => kind === fact.itemKind) || !fits(fact)) continue;
    const count = countIn(fact.state, states);
    if (count > 0) yield { fact, thing: thingOf(examined, fact.procedure, fact.item), count };
  }
}

/** The draft of an ending, with the story of the item. `write` is what to write to bring it home. */
export function endingDraft(
  examined: Examined,
  { fact, thing, count }: Ending,
  told: { readonly message: string; readonly write: string },
): Draft {
  const draft = ledgerDraft(examined, fact, {
    message: told.message,
    help: `${told.write}, or say ${promise(fact)} under ${code('leaves')} in the front matter if the job is to end so.`,
    related: [
      ...storyOf(fact.story, thing.size),
      ...fact.closedOver.map((place) => related(place, 'closed over here')),
    ],
  });
  return { ...draft, data: { ...draft.data, count }, fix: completionOf(examined, fact) };
}

/** Missing steps change what a job is, so they wait for the writer's yes. */
function completionOf(examined: Examined, { procedure, item }: NotHome): Fix | undefined {
  const edits = examined.completion(procedure, item);
  if (edits === undefined || edits.length === 0) return undefined;
  return { kind: 'suggestion', title: 'Write the missing steps', edits: [...edits] };
}

const promise = (fact: NotHome): string => code(`${fact.item}: ${spreadYaml(fact.state)}`);
