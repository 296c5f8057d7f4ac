import type { Catalogue, Item } from '../catalogue/index.ts';
import { verbsFor } from '../ledger/index.ts';
import { itemFinder, type UntrackedWork } from '../rules/index.ts';
import type { Candidates } from './item-candidates.ts';

/**
 * The entries that the clause of a command names by their whole names, or, where it names none, those that the
 * sentence has named before it: "push the cap down and turn it off". `end` is where the words of the command end.
 */
export function namedAnywhere(
  { text, found }: UntrackedWork,
  catalogue: Catalogue,
  clauseEnd: number,
): { readonly candidates: Candidates; readonly end: number } | undefined {
  const words = text.text;
  const can = ({ kind }: Item): boolean => {
    if (kind === 'tool' || kind === 'hazard') return false;
    if (found.said.verbs.includes('apply')) return kind === 'consumable';
    return kind !== 'consumable' && verbsFor(kind).some((verb) => found.said.verbs.includes(verb));
  };
  const inClause = found.isOnIt
    ? []
    : namesIn(words, found.start, clauseEnd, catalogue).filter(({ item }) => can(item));
  if (inClause.length > 0) return told(inClause, Math.max(...inClause.map(({ end }) => end)));
  const from = Math.max(0, words.slice(0, found.start).search(/[^.!?]*$/));
  const before = namesIn(words, from, found.start, catalogue).filter(({ item }) => can(item));
  return before.length === 0 ? undefined : told(before, found.end);
}

interface Named {
  readonly item: Item;
  readonly end: number;
}

const told = (named: readonly Named[], end: number) => ({
  candidates: { fits: [...new Set(named.map(({ item }) => item))], matched: 1, near: undefined },
  end,
});

function namesIn(text: string, start: number, end: number, catalogue: Catalogue): Named[] {
  const find = itemFinder(catalogue);
  const named: Named[] = [];
  let at = start;
  for (;;) {
    const found = find(text.slice(at, end));
    if (found === undefined) return named;
    if (begins.test(text.slice(start, at + found.start)))
      named.push({ item: found.item, end: at + found.end });
    at += found.end;
  }
}

/** Before a whole name stands none of these as a part of a longer one: not the "drum" of a "brake drum". */
const begins =
  /(?:^|[^\p{L}\p{N}\s]\s*|(?:^|[\s(])(?:the|an?|of|for|from|at|to|in|on|with|into|between|across|and|or|its|their|each|both|all|every|any|new|old|other|used|clean|left|right|hot|cold|worn|\d+|one|two|three|four|five|six|eight|ten|twelve|check|inspect|examine|measure|press|drain|remove|loosen|turn|push|lift|hold|rock|close)\s+)$/iu;
