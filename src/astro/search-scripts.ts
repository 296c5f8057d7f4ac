import { type Book, searchDocuments, searchIndex } from '../render/index.ts';
import { bundleScript, licence } from './bundle-script.ts';

/** The script that asks the index of the search. */
export const searchPageScript = async (): Promise<string> =>
  bundleScript('scripts/search.ts', { banner: await licence('minisearch', 'LICENSE.txt') });

/** The index that the search asks, as a script that leaves it in the window. */
export function searchIndexScript(book: Pick<Book, 'sheets' | 'machines'>): string {
  return asScript(searchIndex(searchDocuments(book)));
}

/** JSON as a script: quotes of JSON need no escape within single ones. */
function asScript(json: string): string {
  return `window.tallyboltIndex='${json.replace(/[\\']/g, '\\$&')}';\n`;
}
