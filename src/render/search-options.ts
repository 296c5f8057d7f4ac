import type { Options } from 'minisearch';
import { askedTerms, indexTerms } from './search-terms.ts';

/** Something that the search finds, with the words by which it is found. */
export interface SearchDocument {
  /** Its place among all of them. */
  readonly id: number;
  readonly href: string;
  readonly title: string;
  /** What it is: "Sheet", "Fasteners". */
  readonly kind: string;
  /** Document number and variants, or part number and machine. */
  readonly detail: string;
  /** Names that are not in the title. */
  readonly names: string;
  /** Document and part numbers. */
  readonly numbers: string;
  /** All other words: steps, hazards, facts. */
  readonly text: string;
}

/** What of a found thing is shown. */
export type Shown = Pick<SearchDocument, 'href' | 'title' | 'kind' | 'detail'>;

/** How the index is built and asked; the page of the search reads it with the same options. */
export const searchOptions: Options<SearchDocument> = {
  fields: ['title', 'numbers', 'names', 'text'],
  storeFields: ['href', 'title', 'kind', 'detail'],
  tokenize: indexTerms,
  processTerm: (term) => term,
  searchOptions: { tokenize: askedTerms, processTerm: (term) => term },
};
