import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Redline } from '../../schemas/redline.ts';
import { launchBrowser } from '../../src/command/browser.ts';
import { pageStyles } from '../../src/command/redline-styles.ts';
import { redlineAsMarkdown, redlineAsPage, redlineAsText } from '../../src/redline/index.ts';
import { attack, hebrew, longNumber, longWord } from '../site/hostile-manual.ts';
import { edited, manual, redlineOf } from './compare.ts';

const path = 'procedures/change-seal.md';
const text = manual[path] ?? '';
const few = edited(
  ['machine', '45 N·m', '40 N·m'],
  ['job', '2. ::hazard{of=ram}\n\n   :remove', '2. :remove'],
  ['job', 'time="5 min"', 'time="8 min"'],
  ['job', 'Pull the old seal', 'Draw the old seal'],
);

/** Every text of an author is one that must do no harm. */
const hostile: Redline = (() => {
  const name = JSON.stringify(`${attack} ${longWord} ${hebrew} \u001b[31m`);
  const machine = (manual['machines/press.yaml'] ?? '').replace('name: top cover', `name: ${name}`);
  const words = `${attack.replaceAll('<', '\\<')} ${longNumber} @everyone #12 **bold** https://x.example`;
  return redlineOf(manual, {
    'manual.yaml': `${manual['manual.yaml'] ?? ''}safety: ${name}\n`,
    'machines/press.yaml': machine.replace('HLP 46', attack.replaceAll(/['":>]/g, '') + longWord),
    [path]: text
      .replace('Pull the old seal', `Pull ${words}`)
      .replace('title: Change the seal', `title: ${name}`),
  });
})();

test('text: what is risky first, each change once, no line wider than the terminal', () => {
  const told = redlineAsText(few, undefined, 72);
  expect(told.split('\n').filter((line) => line.length > 72)).toEqual([]);
  expect(told.match(/Torque of cover bolt lowered/g)).toHaveLength(1);
  expect(told).toContain('change-seal, Change the seal (revision 1, not raised; performed by');
  expect(told.indexOf('Hazard removed')).toBeLessThan(told.indexOf('Time: '));
});

test('text: nothing of an author reaches the terminal but print', () => {
  expect(redlineAsText(hostile)).not.toMatch(/(?!\n)\p{Cc}/u);
});

test('Markdown: no markup, call or address of an author', () => {
  const told = redlineAsMarkdown(hostile);
  expect(told).not.toMatch(/(?<!\\)<(script|img)/);
  expect(told).not.toMatch(/@everyone|#12\b|https:\/\/x/);
  expect(told).not.toContain(' **bold**');
});

describe('the page in a browser', () => {
  let browser: Browser;
  let styles: string;
  beforeAll(async () => {
    browser = await launchBrowser();
    styles = await pageStyles();
  }, 180_000);
  afterAll(() => browser?.close());

  const show = async (redline: Redline, width: number): Promise<Page> => {
    const page = await browser.newPage({ viewport: { width, height: 900 } });
    await page.setContent(redlineAsPage(redline, styles));
    return page;
  };

  test('values before and after stand in the margin, level with what changed, risk with a wide bar', async () => {
    const page = await show(few, 1000);
    const torque = page.locator('.change', { hasText: 'Torque of cover bolt lowered' });
    expect(await torque.locator('.margin del').textContent()).toContain('45');
    expect(await torque.locator('.margin ins').textContent()).toContain('40');
    const bar = (of: string): Promise<string> =>
      page
        .locator('.change', { hasText: of })
        .evaluate((one) => getComputedStyle(one).borderLeftWidth);
    expect([await bar('Torque of cover bolt'), await bar('Time')]).toEqual(['6px', '2px']);
    expect(
      await page.locator('.change', { hasText: 'Words changed' }).locator('ins').allInnerTexts(),
    ).toEqual(['Draw']);
    await page.close();
  });

  test('texts of authors are texts, on wide and on narrow screens nothing runs out at the side', async () => {
    for (const width of [1000, 360]) {
      const page = await show(hostile, width);
      expect(await page.locator('script, img, iframe, a').count()).toBe(0);
      expect(await page.locator('main').textContent()).toContain('<script>alert(1)</script>');
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over).toBeLessThanOrEqual(0);
      await page.close();
    }
  });

  test('on paper it is black on white', async () => {
    const page = await show(few, 794);
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const [ink, paper] = await page.locator('main').evaluate((main) => {
      const style = getComputedStyle(main);
      return [style.color, style.backgroundColor];
    });
    expect([ink, paper]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    await page.close();
  });
});
