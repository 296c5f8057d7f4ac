import { sayInStrip, stripOf } from './strip.ts';

/** A press on a place opens it in the writer's editor, or copies it where the proof knows no editor. */
export function openPlaces(page: Document): void {
  page.addEventListener('click', ({ target }) => {
    const button = target instanceof Element ? target.closest<HTMLElement>('.proof-place') : null;
    const place = button?.dataset.place;
    if (place === undefined) return;
    void (stripOf(page).opens ? open(page, place) : copy(page, place));
  });
}

async function open(page: Document, place: string): Promise<void> {
  sayInStrip(page, `Opening ${place} …`);
  try {
    const answer = await fetch('/proof/open', {
      method: 'POST',
      headers: { 'content-type': 'text/plain', 'x-tallybolt-proof': stripOf(page).token },
      body: place,
    });
    sayInStrip(page, await answer.text());
  } catch {
    sayInStrip(page, 'The proof does not answer. Is it still running in your terminal?');
  }
}

async function copy(page: Document, place: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(place);
    sayInStrip(page, `Copied: ${place}`);
  } catch {
    sayInStrip(page, `It could not be copied. The place is ${place}`);
  }
}
