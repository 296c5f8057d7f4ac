/// <reference lib="dom" />
import type { Page } from 'playwright-core';
import type { PdfPage } from '../pdf-text.ts';

/** What must stand on one page: its name, and its texts in the order of the page, without white space. */
export interface Together {
  readonly name: string;
  readonly texts: readonly string[];
}

/**
 * The steps of a sheet as print shows them, and each hazard with what comes after it. Of a step with steps in
 * it that is all down to the first of these: it breaks between them.
 */
export function stepsOnSheet(page: Page): Promise<Together[]> {
  return page.evaluate(() => {
    const textsOf = (root: Element, isWanted: (node: Node) => boolean): string[] => {
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
      const texts: string[] = [];
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const box = node.parentElement;
        const words = (node.textContent ?? '').replace(/\s/g, '');
        // What is read from right to left stands in a PDF in the order of drawing.
        const isTurned = /[\p{Script=Hebrew}\p{Script=Arabic}]/u.test(words);
        if (words !== '' && !isTurned && box?.checkVisibility() && isWanted(node))
          texts.push(words);
      }
      return texts;
    };
    const isAfter = (node: Node, other: Element): boolean =>
      (other.compareDocumentPosition(node) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    return [...document.querySelectorAll<HTMLElement>('.work li.step')]
      .filter((step) => step.checkVisibility())
      .map((step) => {
        const inner = step.querySelector('li.step');
        return {
          name: step.id,
          texts: textsOf(step, (node) => {
            if (inner === null) return true;
            return inner.contains(node)
              ? node.parentElement?.closest('.tick')?.parentElement === inner
              : !isAfter(node, inner);
          }),
        };
      });
  });
}

/**
 * The page on which each of them begins, counted from 1, or words for what parts it. Texts come one after the
 * other, with at most `between` letters of generated words from the first to the last.
 */
export function placesOf(
  parts: readonly Together[],
  pages: readonly PdfPage[],
  between = 60,
): ReadonlyMap<string, number | string> {
  const texts = pages.map(({ text }) => latin(text));
  const found = new Map<string, number | string>();
  let at = { page: 0, from: 0 };
  for (const { name, texts: own } of parts) {
    const wanted = own.map(latin).filter((text) => text !== '');
    let place: number | string =
      `${name} stands on no page whole: ${wanted.join(' ').slice(0, 80)}`;
    for (let page = at.page; page < texts.length; page += 1) {
      const end = stretch(texts[page] ?? '', page === at.page ? at.from : 0, wanted, between);
      if (end === undefined) continue;
      place = page + 1;
      at = { page, from: end };
      break;
    }
    found.set(name, place);
  }
  return found;
}

/** Where texts that stand together start, one letter on, so that the next may begin within them. */
function stretch(
  page: string,
  from: number,
  wanted: readonly string[],
  between: number,
): number | undefined {
  const [first = ''] = wanted;
  for (let start = page.indexOf(first, from); start >= 0; start = page.indexOf(first, start + 1)) {
    let end = start;
    let gaps = 0;
    for (const text of wanted) {
      const next = page.indexOf(text, end);
      gaps = next < 0 ? Number.POSITIVE_INFINITY : gaps + next - end;
      end = next + text.length;
      if (gaps > between) break;
    }
    if (gaps <= between) return start + 1;
  }
  return undefined;
}

/** Signs and other scripts may come out of a PDF as other characters. */
const latin = (text: string): string =>
  text.toLowerCase().replace(/[^\p{Script=Latin}\p{N}]/gu, '');
