import MiniSearch from 'minisearch';
import { type SearchDocument, searchOptions } from './search-options.ts';

/** The index of all documents as JSON. Same input, same bytes. */
export function searchIndex(documents: readonly SearchDocument[]): string {
  const index = new MiniSearch(searchOptions);
  index.addAll(documents);
  return JSON.stringify(index);
}
