/// <reference lib="dom" />
import type { Page } from 'playwright-core';

export interface FocusStops {
  /** What can be worked on the page, in the order in which it is read. */
  readonly expected: readonly string[];
  /** Where Tab came to, from the start of the page until it left it. */
  readonly reached: readonly string[];
  /** Stops at which the focus cannot be seen: no outline, or off the screen. */
  readonly unseen: readonly string[];
}

/** Goes through a page with Tab. */
export async function focusStops(page: Page): Promise<FocusStops> {
  const expected = await page.evaluate(() => {
    const isStop = (element: HTMLElement | SVGElement): boolean =>
      element.tabIndex >= 0 &&
      !element.matches(':disabled') &&
      element.closest('[inert]') === null &&
      element.checkVisibility({ visibilityProperty: true }) &&
      // Of radio buttons Tab comes to the chosen one.
      !(element instanceof HTMLInputElement && element.type === 'radio' && !element.checked);
    const found = document.querySelectorAll<HTMLElement | SVGElement>(
      'a[href], button, input, select, textarea, summary, [tabindex]',
    );
    return [...found].filter(isStop).map((element, i) => {
      const words = element.getAttribute('aria-label') ?? element.textContent ?? '';
      const name = `${i} ${element.tagName.toLowerCase()} ${words.replace(/\s+/g, ' ').trim().slice(0, 40)}`;
      Reflect.set(element, 'stop', name);
      return name;
    });
  });
  await page.evaluate(() => {
    document.body.tabIndex = -1;
    document.body.focus();
    document.body.removeAttribute('tabindex');
  });
  const reached: string[] = [];
  const unseen: string[] = [];
  for (let i = 0; i <= expected.length; i += 1) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      const at = document.activeElement;
      if (at === null || at === document.body) return undefined;
      const name = Reflect.get(at, 'stop') ?? `not to be worked: ${at.outerHTML.slice(0, 80)}`;
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      const ring = at.querySelector('.ring');
      const isMarked =
        (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2) ||
        (ring !== null && Number.parseFloat(getComputedStyle(ring).strokeWidth) >= 3);
      const { left, right, top, bottom } = at.getBoundingClientRect();
      const isOnScreen = right > 0 && bottom > 0 && left < innerWidth && top < innerHeight;
      return { name: String(name), isSeen: isMarked && isOnScreen };
    });
    if (stop === undefined) break;
    reached.push(stop.name);
    if (!stop.isSeen) unseen.push(stop.name);
  }
  return { expected, reached, unseen };
}
