import { sayInStrip, stripOf } from './strip.ts';
import { takeOver } from './take-over.ts';

/** Lets a page follow the files: each time that the proof has checked anew, its content takes the place of the old. */
export function keepUp(page: Document): void {
  let news: EventSource | undefined;
  let isBusy = false;
  let wanted = '';
  const follow = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    while (wanted !== stripOf(page).edition) {
      const asked = wanted;
      try {
        const answer = await fetch(location.pathname, { cache: 'no-store' });
        takeOver(page, await answer.text());
      } catch {
        break;
      }
      if (asked === wanted) break;
    }
    isBusy = false;
  };
  const listen = (): void => {
    if (news !== undefined || page.visibilityState === 'hidden') return;
    news = new EventSource('/proof/news');
    news.addEventListener('message', ({ data }) => {
      if (lost) sayInStrip(page, '');
      lost = false;
      wanted = String(data);
      void follow();
    });
    news.addEventListener('error', () => {
      lost = true;
      sayInStrip(page, 'The proof has stopped: this page no longer follows your files.');
    });
  };
  let lost = false;
  // A browser keeps few connections to one server: a page that nobody sees gives its own back.
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState === 'visible') listen();
    else {
      news?.close();
      news = undefined;
    }
  });
  addEventListener('pageshow', listen);
  addEventListener('pagehide', () => {
    news?.close();
    news = undefined;
  });
  listen();
}
