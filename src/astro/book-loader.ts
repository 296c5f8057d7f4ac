import type { Loader } from 'astro/loaders';
import type { Frame } from './book-module.ts';

/**
 * Loads finished entries of the Book into Astro's content layer. Nothing is parsed, checked or
 * rendered here: the core has done it. An entry's digest covers its own data and the frame of the
 * manual (title, edition, safety text, draft), since its page shows both.
 */
export function bookLoader<Entry extends { readonly id: string }>(
  name: string,
  entries: readonly Entry[],
  frame: Frame,
  htmlOf: (entry: Entry) => string,
): Loader {
  return {
    name,
    load: async ({ store, generateDigest }) => {
      store.clear();
      const ofFrame = generateDigest(JSON.stringify(frame));
      for (const entry of entries) {
        store.set({
          id: entry.id,
          data: { ...entry },
          digest: generateDigest(JSON.stringify([entry, ofFrame])),
          rendered: { html: htmlOf(entry) },
        });
      }
    },
  };
}
