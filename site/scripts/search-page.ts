import MiniSearch from 'minisearch';
import { searchOptions } from '../../src/render/search-options.ts';
import { find, type Hit } from './find.ts';

declare global {
  interface Window {
    /** The index as JSON, from the script beside this one. */
    tallyboltIndex?: string;
  }
}

/** So many are shown; who needs more asks with one more word. */
const most = 60;

/** Makes the page of the search work: it answers as words are typed, without a request. */
export function searchPage(page: Document): void {
  const form = page.querySelector<HTMLFormElement>('form.search');
  const field = form?.querySelector('input');
  const said = page.querySelector('.search-said');
  const list = page.querySelector('.search-found');
  const json = window.tallyboltIndex;
  if (!form || !field || !said || !list || json === undefined) return;
  const index = MiniSearch.loadJSON(json, searchOptions);
  const root = form.dataset.root ?? '';
  const show = (): void => {
    const hits = find(index, field.value);
    said.textContent = field.value.trim() === '' ? '' : countWords(hits.length);
    list.replaceChildren(...hits.slice(0, most).map((hit) => row(hit, root, page)));
  };
  form.inert = false;
  field.value = new URLSearchParams(window.location.search).get('q') ?? '';
  field.addEventListener('input', show);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    list.querySelector('a')?.focus();
  });
  page.addEventListener('keydown', (event) => move(event, field, list));
  field.focus();
  show();
}

function countWords(count: number): string {
  if (count === 0) return 'Nothing found';
  const found = `${count} found`;
  return count > most ? `${found}, the first ${most} shown` : found;
}

function row({ href, title, kind, detail, words }: Hit, root: string, page: Document): Element {
  const item = page.createElement('li');
  const link = page.createElement('a');
  link.href = root + href;
  link.textContent = title;
  const about = page.createElement('span');
  about.className = 'detail';
  about.textContent = [kind, detail].filter((text) => text !== '').join(': ');
  const why = page.createElement('span');
  why.className = 'detail';
  why.textContent = `Has ${words.join(', ')}`;
  item.append(link, about, why);
  return item;
}

/** Arrow keys go from the field to the results and between them. */
function move(event: KeyboardEvent, field: HTMLInputElement, list: Element): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  const stops: readonly (Element | null)[] = [field, ...list.querySelectorAll('a')];
  const at = stops.indexOf(field.ownerDocument.activeElement);
  const next = at < 0 ? undefined : stops[at + step];
  if (step === 0 || !(next instanceof HTMLElement)) return;
  event.preventDefault();
  next.focus();
}
