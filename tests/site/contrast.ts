/// <reference lib="dom" />
import type { Page } from 'playwright-core';

/**
 * Texts of a page whose contrast with the ground behind them is below what WCAG 2.2 asks for in 1.4.3:
 * 4.5:1, or 3:1 from 24 px, or 18.66 px in bold. Contrast and relative luminance as WCAG defines them.
 */
export function faintTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const channels = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const luminance = (colour: string): number => {
      const [red = 0, green = 0, blue = 0] = channels(colour)
        .map((value) => value / 255)
        .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const isOpaque = (colour: string): boolean => (channels(colour)[3] ?? 1) === 1;
    const ground = (element: Element | null): string => {
      if (element === null) return 'rgb(255, 255, 255)';
      const colour = getComputedStyle(element).backgroundColor;
      return isOpaque(colour) ? colour : ground(element.parentElement);
    };
    const faint: string[] = [];
    for (const element of document.querySelectorAll('body *:not(.draft-mark *)')) {
      const text = [...element.childNodes]
        .filter((node) => node.nodeType === Node.TEXT_NODE)
        .map((node) => node.textContent?.trim())
        .join('');
      if (text === '' || element.getClientRects().length === 0) continue;
      const { color, fontSize, fontWeight } = getComputedStyle(element);
      const [light = 0, dark = 0] = [luminance(color), luminance(ground(element))].sort(
        (a, b) => b - a,
      );
      const contrast = (light + 0.05) / (dark + 0.05);
      const size = Number.parseFloat(fontSize);
      const isLarge = size >= 24 || (size >= 18.66 && Number(fontWeight) >= 700);
      if (contrast < (isLarge ? 3 : 4.5)) faint.push(`${contrast.toFixed(2)} ${text.slice(0, 40)}`);
    }
    return faint;
  });
}
