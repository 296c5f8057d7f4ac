import { cleanupOutdatedCaches, precacheAndRoute } from 'workbox-precaching';

declare const self: ServiceWorkerGlobalScope;

/** Every file of the site with the mark of its bytes; written in when the site is published. */
declare const siteFiles: readonly { readonly url: string; readonly revision: string }[];

// The pages are the same whatever is asked of them: a search reads its question in the page.
precacheAndRoute([...siteFiles], { ignoreURLParametersMatching: [/./] });
cleanupOutdatedCaches();

// A newer copy waits until all pages of the old one are closed, or until its reader asks for it.
self.addEventListener('message', ({ data }) => {
  if (data === 'take-over') void self.skipWaiting();
});
