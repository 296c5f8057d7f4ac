import morphdom from 'morphdom';
import { chooseMachine } from '../variant-page.ts';
import { placeNotes } from './place-notes.ts';

/**
 * Makes the page what the new HTML says. What is the same stays the same element, so that scroll position, focus and
 * what the writer has typed, ticked and unfolded are kept, and nothing flashes.
 */
export function takeOver(page: Document, html: string): void {
  const next = new DOMParser().parseFromString(html, 'text/html');
  placeNotes(next);
  page.title = next.title;
  for (const { name, value } of next.documentElement.attributes)
    page.documentElement.setAttribute(name, value);
  // What is typed into the search and found there does not hang on the files of a moment ago.
  const isSearch = page.querySelector('form.search') !== null;
  const [from, to] = isSearch
    ? [page.querySelector('.proof-strip'), next.querySelector('.proof-strip')]
    : [page.body, next.body];
  if (from === null || to === null) return;
  morphdom(from, to, { onBeforeElUpdated: keepState });
  if (!isSearch) wakeChooser(page);
}

/** Hands over to the new element what the reader has done with the old one; false leaves the old one as it is. */
function keepState(old: HTMLElement, fresh: HTMLElement): boolean {
  if (old.matches('.proof-said')) return false;
  if (old instanceof HTMLDetailsElement && fresh instanceof HTMLDetailsElement)
    fresh.open = old.open;
  if (old instanceof HTMLInputElement && fresh instanceof HTMLInputElement) {
    fresh.checked = old.checked;
    fresh.value = old.value;
  }
  return !old.isEqualNode(fresh);
}

/** The choice of a machine begins anew; its old listeners go with the old element. */
function wakeChooser(page: Document): void {
  const old = page.querySelector<HTMLElement>('.chooser');
  const focused = old?.contains(page.activeElement)
    ? page.activeElement?.getAttribute('data-attribute')
    : undefined;
  const fresh = old?.cloneNode(true);
  if (fresh !== undefined) old?.replaceWith(fresh);
  chooseMachine(page);
  if (focused != null)
    page.querySelector<HTMLElement>(`[data-attribute="${CSS.escape(focused)}"]`)?.focus();
}
