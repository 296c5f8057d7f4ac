import type { LinkFact } from '../../link/index.ts';
import type { Draft, Examined } from '../rule.ts';
import { choices, code } from '../wording/lists.ts';
import { factsOf } from './json.ts';
import { replaceWord } from './replace-word.ts';

type Unknown = Extract<LinkFact, { kind: 'unknown-reference' }>;

/** Drafts for ids of some sort that mean nothing. `say` gives the sentence, `otherwise` what to do where nothing is near. */
export function* unknownReferences(
  examined: Examined,
  what: readonly Unknown['what'][],
  say: (fact: Unknown) => string,
  otherwise: (fact: Unknown) => string,
  isTold: (fact: Unknown) => boolean = () => true,
): Generator<Draft> {
  for (const fact of examined.facts('unknown-reference')) {
    if (!what.includes(fact.what) || !isTold(fact)) continue;
    yield {
      place: fact.place,
      procedure: fact.procedure,
      item: ['position', 'instance', 'limit'].includes(fact.what) ? fact.owner : undefined,
      message: say(fact),
      data: factsOf(fact, ['kind', 'procedure', 'known']),
      help: fact.near === undefined ? otherwise(fact) : `Perhaps ${code(fact.near)} is meant.`,
      fix: replaceWord(examined, fact.place, 'suggestion', fact.id, fact.near),
    };
  }
}

/** "Write `a`, `b` or `c`", or that there is nothing to choose from. */
export function pickFrom(known: readonly string[], none: string): string {
  return known.length === 0 ? none : `Write ${choices(known)}.`;
}
