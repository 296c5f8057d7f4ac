import type MiniSearch from 'minisearch';
import type { SearchResult } from 'minisearch';
import type { SearchDocument, Shown } from '../../src/render/search-options.ts';
import { askedTerms, hasDigit } from '../../src/render/search-terms.ts';

/** Something found, with the words of the manual by which it was. */
export interface Hit extends Shown {
  readonly words: readonly string[];
}

/** More words than that say no more of why it was found. */
const mostWords = 4;

/**
 * What has all of the asked words, the best first. A word counts as it is or as a beginning; a slip of the
 * pen is forgiven in longer words, never in numbers, and only where nothing is found without.
 */
export function find(index: MiniSearch<SearchDocument>, asked: string): readonly Hit[] {
  const terms = askedTerms(asked);
  if (terms.length === 0) return [];
  const whole = terms.join(' ');
  const options = {
    combineWith: 'AND',
    boost: { numbers: 8, title: 5, names: 3 },
    prefix: (term: string) => term.length > 1,
    boostDocument: (_id: unknown, _term: string, stored?: Record<string, unknown>) =>
      askedTerms(text(stored?.title)).join(' ') === whole ? 3 : 1,
  } as const;
  const found = index.search(asked, options);
  const fuzzy = (term: string) => (hasDigit(term) || term.length < 5 ? false : 0.25);
  return (found.length > 0 ? found : index.search(asked, { ...options, fuzzy })).map((one) =>
    hit(one, asked),
  );
}

function hit({ href, title, kind, detail, terms }: SearchResult, asked: string): Hit {
  const shown = { href: text(href), title: text(title), kind: text(kind), detail: text(detail) };
  const spellings = spelt(`${asked} ${shown.title} ${shown.detail}`);
  const words = [...new Set(terms)].map((term) => spellings.get(term) ?? term);
  return { ...shown, words: [...new Set(words)].slice(0, mostWords) };
}

/** How words are written that the index has without hyphens and capitals. */
function spelt(written: string): ReadonlyMap<string, string> {
  const pieces = written.split(/[\s,]+/).reverse();
  return new Map(pieces.map((piece) => [askedTerms(piece).join(''), piece]));
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '');
