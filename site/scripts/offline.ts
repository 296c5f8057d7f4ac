/** What the page says to a waiting copy of the manual, so that it takes the place of the one in use. */
const takeOver = 'take-over';

/**
 * Keeps the manual on the device, for places without a network: only where it comes from a server that
 * the browser trusts. `worker` is the address of the script that does it.
 */
export function keepOffline(page: Document, worker: string): void {
  if (!/^https?:$/.test(location.protocol) || !('serviceWorker' in navigator)) return;
  addEventListener('load', () => {
    void navigator.serviceWorker.register(worker).then(
      (registration) => watch(page, registration),
      // The manual works as before, only not without a network: nothing that whoever reads it could mend.
      () => undefined,
    );
  });
}

function watch(page: Document, registration: ServiceWorkerRegistration): void {
  const tell = (): void => {
    // A first copy waits for nobody; one that waits is newer than the pages in use.
    if (registration.waiting && navigator.serviceWorker.controller) offer(page, registration);
  };
  tell();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', tell);
  });
  page.addEventListener('visibilitychange', () => {
    // Without a network there is nothing newer to be had; the next look asks again.
    if (page.visibilityState === 'visible') void registration.update().catch(() => undefined);
  });
}

/** A line over the page. Nothing is loaded unasked: work may be going on. */
function offer(page: Document, registration: ServiceWorkerRegistration): void {
  if (page.querySelector('.newer') !== null) return;
  const line = page.createElement('aside');
  line.className = 'newer';
  line.setAttribute('role', 'status');
  const words = page.createElement('p');
  words.textContent = 'A newer revision of this manual is here.';
  const load = button('Load it', () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
    registration.waiting?.postMessage(takeOver);
  });
  const later = button('Later', () => line.remove());
  line.append(words, load, later);
  page.body.append(line);

  function button(text: string, act: () => void): HTMLButtonElement {
    const element = page.createElement('button');
    element.type = 'button';
    element.textContent = text;
    element.addEventListener('click', act);
    return element;
  }
}
