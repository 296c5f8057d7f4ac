import type { OpenBook } from '../render/index.ts';

const bookModule = '\0tallybolt-live-book';
const contentModule = '\0tallybolt-live-content';
const style = /\/styles\/([a-z-]+)\.css\?url$/;
const styleModule = '\0tallybolt-style:';

/** What the live modules hand out besides what the pages read. */
export interface LiveBook {
  /** From now on the pages read this one. */
  show(book: OpenBook): void;
}

export const liveBookName = 'tallybolt:book';

/**
 * A Vite plugin in whose site the pages read an open book, another one after each `show`. The module of the book and
 * Astro's content layer are stood in for; a stylesheet is known by its address below `assets/`.
 */
export function liveBook() {
  return {
    name: 'tallybolt-live-book',
    enforce: 'pre' as const,
    resolveId: {
      order: 'pre' as const,
      handler(id: string): string | undefined {
        if (id === liveBookName) return bookModule;
        if (id === 'astro:content') return contentModule;
        const [, sheet] = style.exec(id) ?? [];
        return sheet === undefined ? undefined : styleModule + sheet;
      },
    },
    load: {
      order: 'pre' as const,
      handler(id: string): string | undefined {
        if (id === bookModule) return bookCode;
        if (id === contentModule) return contentCode;
        if (!id.startsWith(styleModule)) return undefined;
        return `export default ${JSON.stringify(`/assets/${id.slice(styleModule.length)}.css`)};`;
      },
    },
  };
}

/** The bindings of a module are live: who has imported them reads what `show` has put there. */
const bookCode = `
export let book, frame, machineLinks;
export function show(next) {
  book = next;
  frame = next.frame;
  machineLinks = next.machineLinks;
}`;

const contentCode = `
import { book } from '${liveBookName}';
export async function getCollection(name) {
  const all = name === 'sheets' ? book.sheets() : book.machines();
  return all.map((data) => ({ id: data.id, data }));
}`;
