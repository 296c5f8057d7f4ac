import type { LinkFact } from '../../link/index.ts';
import { slipsBetween } from '../../source/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { code, listed } from '../wording/lists.ts';

type Broken = Extract<LinkFact, { kind: 'link-broken' }>;

export const rule: Rule = {
  id: 'broken-link',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('link-broken')) {
      const isPart = fact.target.startsWith('#');
      yield {
        place: fact.place,
        procedure: fact.procedure,
        message: isPart
          ? `The link ${code(fact.url)} leads to no section or step: there is no ${code(fact.target.slice(1))}`
          : `The link ${code(fact.url)} leads to no procedure: there is no ${code(fact.target)}`,
        data: factsOf(fact, ['kind', 'procedure', 'known']),
        help: help(fact),
      };
    }
  },
};

function help({ target, near, known }: Broken): string {
  if (near !== undefined) {
    const others = nearestFirst(target.slice(1), known ?? []).filter((id) => id !== near);
    const also =
      others.length === 0
        ? ''
        : `; there ${others.length === 1 ? 'is' : 'are'} also ${listed(others)}`;
    return `Perhaps ${code(near)} is meant${also}.`;
  }
  if (known === undefined)
    return 'Link to a procedure of this manual by its file, such as [make safe](make-safe.md).';
  if (known.length === 0)
    return 'That file has neither headings nor named steps: link to it without the #.';
  return `There ${known.length === 1 ? 'is only' : 'are'} ${listed(nearestFirst(target.slice(1), known))}.`;
}

/** By how much of the word they share, then in order of reading. */
function nearestFirst(word: string, known: readonly string[]): string[] {
  const slips = (id: string): number => slipsBetween(word, id) / Math.max(word.length, id.length);
  return known.toSorted((a, b) => slips(a) - slips(b));
}
