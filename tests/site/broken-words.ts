/// <reference lib="dom" />
import type { Page } from 'playwright-core';

/** Words of at most 24 letters that a page has on two lines, with the kind of their place. */
export function brokenWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    const broken: string[] = [];
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const place = node.parentElement;
      const head = place?.closest('thead');
      // The head of a table that stacks is there for the ear only.
      const isUnseen = head !== null && head !== undefined && head.clientWidth <= 1;
      if (place === null || isUnseen || !place.checkVisibility() || place.closest('pre, svg'))
        continue;
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[\p{L}\p{N}]{2,24}/gu)) {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top / 8)));
        if (lines.size > 1)
          broken.push(`${word} (${place.closest('td, th, li, p, div')?.tagName})`);
      }
    }
    return broken;
  });
}
