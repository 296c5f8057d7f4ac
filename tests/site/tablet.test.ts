/// <reference lib="dom" />
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { jobCardSchema } from '../../schemas/job-card.ts';
import { launchBrowser } from '../../src/command/browser.ts';
import { pdfPages } from '../pdf-text.ts';
import { bookOf } from '../render/linked-manual.ts';
import { faintTexts } from './contrast.ts';
import { jobManual } from './job-manual.ts';
import { type Bench, makeBench } from './published.ts';

let bench: Bench;
let browser: Browser;
let context: BrowserContext;
let site: string;
/** The same manual with a step put in before step 3, and step 6 said otherwise. */
let revised: string;

beforeAll(async () => {
  bench = await makeBench();
  site = await bench.publish({ ...bookOf(jobManual), draft: false }, 'site');
  const wheels = (jobManual['procedures/wheels.md'] ?? '')
    .replace('revision: 2', 'revision: 3')
    .replace('3. :check', '3. Look at the lamps.\n4. :check')
    .replace('[Take the nuts off]', '[Take all nuts off]');
  revised = await bench.publish(
    bookOf({ ...jobManual, 'procedures/wheels.md': wheels }),
    'revised',
  );
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await bench.clear();
});
/** A device of its own for each test. */
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 820, height: 1180 } });
});
afterEach(() => context.close());

const wheels = 'procedures/wheels/index.html';

async function open(folder = site, path = wheels): Promise<Page> {
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, path)).href);
  return page;
}

const tick = (page: Page, name: string) => page.getByRole('checkbox', { name, exact: true });
const count = (page: Page) => page.locator('.job .count').textContent();
const stored = (page: Page) => page.evaluate(() => Object.keys(localStorage));
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

describe('a job on a tablet', () => {
  test('nothing is kept before the first tick', async () => {
    const page = await open();
    await page.getByLabel('Job or work order').fill('WO 1');
    await page.reload();
    expect(await stored(page)).toEqual([]);
    expect(await count(page)).toBe('Begins with the first tick');
    expect(await page.getByRole('button', { name: 'Reset' }).isDisabled()).toBe(true);
  });

  test('ticks of steps and places, readings and names survive a reload', async () => {
    const page = await open();
    await page.getByLabel('Job or work order').fill('WO 4711');
    await page.getByLabel('Technician').fill('A. Field');
    await tick(page, 'Step 1 done').check();
    await tick(page, 'Step 2.1 done').check();
    await tick(page, 'Step 3, left done').check();
    await page.getByLabel('Measure the rod: value read').fill('50.1');
    await page.reload();
    expect(await page.getByLabel('Job or work order').inputValue()).toBe('WO 4711');
    expect(await page.getByLabel('Technician').inputValue()).toBe('A. Field');
    const boxes = page.locator('.work input[type=checkbox]:checked');
    expect(await boxes.evaluateAll((all) => all.map((box) => box.ariaLabel))).toEqual([
      'Step 1 done',
      'Step 2.1 done',
      'Step 3, left done',
    ]);
    expect(await page.getByLabel('Measure the rod: value read').inputValue()).toBe('50.1');
    expect(await page.locator('.verdict').textContent()).toBe('Not within limits: above 50 mm');
    expect(await count(page)).toMatch(/^Started \d\d:\d\d · 1 of 10 steps done, 2 passed over$/);
    expect(await page.locator('.notes').textContent()).toBe('');
  });

  test('it goes on where it stopped', async () => {
    const page = await open();
    for (const number of ['1', '2', '2.1', '2.2', '3'])
      await tick(page, `Step ${number} done`).check();
    await page.reload();
    await page.getByRole('link', { name: 'Continue at step 4' }).click();
    expect(page.url()).toMatch(/#step-4$/);
    expect(await page.locator('#step-4').boundingBox()).toMatchObject({ y: expect.any(Number) });
  });

  test('reset clears the job after a question, and only then', async () => {
    const page = await open();
    await tick(page, 'Step 1 done').check();
    await page.getByLabel('Measure the rod: value read').fill('50');
    const asked: string[] = [];
    page.once('dialog', (dialog) => {
      asked.push(dialog.message());
      void dialog.dismiss();
    });
    await press(page, 'Reset');
    expect(await tick(page, 'Step 1 done').isChecked()).toBe(true);
    page.once('dialog', (dialog) => void dialog.accept());
    await press(page, 'Reset');
    expect(asked).toEqual(['Clear all ticks and readings of this job?']);
    await page.reload();
    expect(await tick(page, 'Step 1 done').isChecked()).toBe(false);
    expect(await page.getByLabel('Measure the rod: value read').inputValue()).toBe('');
    expect(await count(page)).toContain('0 of 10 steps done');
  });

  test('two jobs on one sheet and jobs on two sheets are kept apart, and deleted by hand', async () => {
    const page = await open();
    await page.getByLabel('Job or work order').fill('WO 1');
    await tick(page, 'Step 1 done').check();
    await press(page, 'New job');
    expect(await tick(page, 'Step 1 done').isChecked()).toBe(false);
    await page.getByLabel('Job or work order').fill('WO 2');
    await tick(page, 'Step 2 done').check();
    await page.locator('.kept summary').click();
    await press(page, 'Open WO 1');
    expect(await tick(page, 'Step 1 done').isChecked()).toBe(true);
    expect(await tick(page, 'Step 2 done').isChecked()).toBe(false);
    const wash = await open(site, 'procedures/wash/index.html');
    expect(await tick(wash, 'Step 1 done').isChecked()).toBe(false);
    page.on('dialog', (dialog) => void dialog.accept());
    await press(page, 'Delete WO 1');
    expect(await count(page)).toBe('Begins with the first tick');
    expect(await page.locator('.kept .many').textContent()).toBe('1');
    await press(page, 'Delete WO 2');
    expect(await stored(page)).toEqual([]);
  });

  test('what one tab ticks the other one shows', async () => {
    const page = await open();
    const other = await open();
    await tick(page, 'Step 1 done').check();
    await other.locator('#step-1 > .tick input:checked').waitFor();
    await tick(other, 'Step 2 done').check();
    await page.locator('#step-2 > .tick input:checked').waitFor();
    expect(await page.locator('.kept .many').textContent()).toBe('1');
  });

  test('only the steps of the chosen machine are counted', async () => {
    const page = await open();
    await tick(page, 'Step 6 done').check();
    await page.locator('.chooser summary').click();
    await page.getByLabel('brakes').selectOption('none');
    expect(await count(page)).toContain('1 of 9 steps done');
    expect(await tick(page, 'Step 5 done').isChecked()).toBe(true);
    expect(await page.getByRole('link', { name: 'Continue at step 6' }).isVisible()).toBe(true);
    await page.reload();
    expect(await count(page)).toContain('1 of 9 steps done');
    expect(await page.locator('.notes').textContent()).toBe('');
  });

  test('on a later revision marks go with their steps, and a changed step asks anew', async () => {
    const page = await open();
    for (const number of [1, 3, 6]) await tick(page, `Step ${number} done`).check();
    const later = await open(revised);
    const done = later.locator('.work li.step:has(> .tick input:checked)');
    expect(await done.evaluateAll((rows) => rows.map(({ id }) => id))).toEqual([
      'step-1',
      'step-4',
    ]);
    expect(await later.locator('.notes').textContent()).toBe(
      'This job was begun with revision 2; the sheet is now revision 3. Of the earlier sheet, step 6 had marks and read otherwise now: the marks were taken out. See what the sheet asks for there, and mark it anew.',
    );
  });

  test('where the browser keeps nothing the sheet says so and works', async () => {
    await context.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    });
    const page = await open();
    expect(await page.locator('.notes').textContent()).toMatch(/^This browser keeps nothing/);
    await tick(page, 'Step 1 done').check();
    expect(await count(page)).toContain('1 of 10 steps done');
  });
});

describe('the job card', () => {
  test('is a file that keeps its schema', async () => {
    const page = await open();
    await page.getByLabel('Job or work order').fill('WO 4711');
    await tick(page, 'Step 1 done').check();
    await tick(page, 'Step 3, right done').check();
    await page.getByLabel('Measure the rod: value read').fill('49,95');
    const download = page.waitForEvent('download');
    await press(page, 'Save job card');
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/^job-WO-4711-.*\.json$/);
    const card = jobCardSchema.parse(JSON.parse(await readFile(await file.path(), 'utf8')));
    expect(card.sheet).toMatchObject({ id: 'wheels', revision: '2' });
    expect(card.job.name).toBe('WO 4711');
    expect(card.steps.map(({ step }) => step)).toEqual([
      '1',
      '2',
      '2.1',
      '2.2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '10',
    ]);
    expect(card.steps[0]?.done).toBe(card.job.started);
    expect(card.steps[4]?.places?.map(({ place, done }) => [place, done !== undefined])).toEqual([
      ['left', false],
      ['right', true],
    ]);
    expect(card.readings).toMatchObject([
      { step: '4', value: '49,95', low: 49.9, high: 50, unit: 'mm', verdict: 'within' },
    ]);
  });

  test('on paper the title block names the job, and ticks and readings are filled in', async () => {
    const page = await open();
    const blank = (await pdfPages(await page.pdf({ format: 'A4' }))).join('');
    await page.getByLabel('Job or work order').fill('WO 4711');
    await page.getByLabel('Technician').fill('A. Field');
    await tick(page, 'Step 1 done').check();
    await page.getByLabel('Measure the rod: value read').fill('51.25');
    const paper = (await pdfPages(await page.pdf({ format: 'A4' }))).join('');
    for (const words of ['WO4711', 'A.Field', '1of10', '51.25', 'Notwithinlimits:above50mm']) {
      expect(paper).toContain(words);
      expect(blank).not.toContain(words);
    }
    expect(paper).not.toContain('Savejobcard');
    await page.emulateMedia({ media: 'print' });
    const drawn = (selector: string) =>
      page.locator(selector).evaluate((box) => {
        const { backgroundImage, printColorAdjust } = getComputedStyle(box);
        return [backgroundImage === 'none', printColorAdjust];
      });
    expect(await drawn('#step-1 > .tick input')).toEqual([false, 'exact']);
    expect((await drawn('#step-2 > .tick input'))[0]).toBe(true);
  });
});

describe('the screen', () => {
  test('stays awake while a job is open and to be seen, and no longer', async () => {
    await context.addInitScript(() => {
      let held = 0;
      const request = async () => {
        held += 1;
        document.documentElement.dataset.held = String(held);
        return {
          released: false,
          async release() {
            held -= 1;
            document.documentElement.dataset.held = String(held);
          },
        };
      };
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    });
    const page = await open(site, 'procedures/wash/index.html');
    const held = () => page.evaluate(() => document.documentElement.dataset.held ?? 'never');
    expect(await held()).toBe('never');
    await tick(page, 'Step 1 done').check();
    await expect.poll(held).toBe('1');
    await tick(page, 'Step 2 done').check();
    await expect.poll(held).toBe('1');
    await press(page, 'Finish');
    await expect.poll(held).toBe('0');
    expect(await count(page)).toMatch(
      /^Started \d\d:\d\d, finished \d\d:\d\d · 2 of 2 steps done$/,
    );
  });

  test('look and size of type are kept on the device, for all pages', async () => {
    const page = await open();
    const ground = () =>
      page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const letters = () =>
      page.evaluate(
        () =>
          Math.round(4 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize)) /
          4,
      );
    const light = await ground();
    await page.getByText('Display', { exact: true }).click();
    await page.getByLabel('Dark').check();
    await page.getByLabel('Large', { exact: true }).check();
    const dark = await ground();
    expect(dark).not.toBe(light);
    expect(await letters()).toBe(21.25);
    await page.goto(pathToFileURL(join(site, 'index.html')).href);
    expect([await ground(), await letters()]).toEqual([dark, 21.25]);
    await page.getByText('Display', { exact: true }).click();
    expect(await page.getByLabel('Dark').isChecked()).toBe(true);
    await page.getByLabel('Light', { exact: true }).check();
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await ground()).toBe(light);
    await page.getByLabel('As the device').check();
    expect(await ground()).toBe(dark);
    await page.getByLabel('Normal').check();
    expect([await letters(), await stored(page)]).toEqual([17, []]);
  });

  test.each([
    ['light', 'normal'],
    ['dark', 'larger'],
  ])('text stands out in the chosen %s look, %s type', async (look, type) => {
    await context.addInitScript(
      (text) => localStorage.setItem('tallybolt display', text),
      `${look} ${type}`,
    );
    const page = await open();
    await page.emulateMedia({ colorScheme: look === 'dark' ? 'light' : 'dark' });
    await tick(page, 'Step 1 done').check();
    await page.locator('.kept summary').click();
    expect(await faintTexts(page)).toEqual([]);
  });

  /* 320 px is the width of WCAG 2.2, 1.4.10 Reflow. */
  test.each([
    [320, 'normal'],
    [320, 'larger'],
    [820, 'larger'],
  ])('%i px wide with %s type nothing sticks out', async (width, type) => {
    await context.addInitScript(
      (text) => localStorage.setItem('tallybolt display', text),
      `device ${type}`,
    );
    const page = await open();
    await page.setViewportSize({ width, height: 900 });
    await page
      .getByLabel('Job or work order')
      .fill('A very long name of a work order of sixty letters in all');
    await tick(page, 'Step 1 done').check();
    await page.locator('.kept summary').click();
    await page.getByText('Display', { exact: true }).click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      width,
    );
    for (const button of await page.locator('.job button, .job input, .job summary').all())
      expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  });

  test.each([390, 820])(
    'at %i px nothing moves when the bar wakes up or the job begins',
    async (width) => {
      const asleep = await context.newPage();
      await asleep.route('**/sheet.js', (route) => route.abort());
      const page = await open();
      const height = async (of: Page) => {
        await of.setViewportSize({ width, height: 900 });
        return (await of.locator('.job').boundingBox())?.height;
      };
      await asleep.goto(page.url());
      const before = await height(asleep);
      expect(await asleep.locator('.job').isVisible()).toBe(false);
      expect(before).toBeGreaterThan(100);
      expect(await height(page)).toBe(before);
      await tick(page, 'Step 1 done').check();
      expect(await page.getByRole('link', { name: 'Continue at step 2' }).isVisible()).toBe(true);
      expect(await height(page)).toBe(before);
      await page.reload();
      expect(await height(page)).toBe(before);
    },
  );

  test('everything can be done with the keyboard alone', async () => {
    const page = await open();
    const reach = async (name: string): Promise<void> => {
      for (let i = 0; i < 80; i += 1) {
        await page.keyboard.press('Tab');
        const here = await page.evaluate(() => {
          const at = document.activeElement;
          return (
            at?.getAttribute('aria-label') ?? at?.closest('label')?.textContent ?? at?.textContent
          );
        });
        if (here?.trim().startsWith(name)) return;
      }
      throw new Error(`the keyboard does not reach ${name}`);
    };
    await reach('Display');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('Light', { exact: true }).isChecked()).toBe(true);
    await reach('Job or work order');
    await page.keyboard.type('WO 7');
    await reach('Step 1 done');
    await page.keyboard.press('Space');
    expect(await count(page)).toContain('1 of 10 steps done');
    page.once('dialog', (dialog) => void dialog.accept());
    await page.getByLabel('Technician').focus();
    await reach('Finish');
    await page.keyboard.press('Enter');
    expect(await count(page)).toContain('finished');
  });

  test('axe-core finds nothing on a sheet with an open job', async () => {
    const source = await readFile(createRequire(import.meta.url).resolve('axe-core'), 'utf8');
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await open();
      await page.emulateMedia({ colorScheme });
      await page.getByText('Display', { exact: true }).click();
      await tick(page, 'Step 1 done').check();
      await page.getByLabel('Measure the rod: value read').fill('51');
      await page.locator('.kept summary').click();
      const violations = await page.evaluate(async (script) => {
        new Function(script)();
        const axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } =
          Reflect.get(window, 'axe');
        const { violations } = await axe.run();
        return violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)]);
      }, source);
      expect(violations).toEqual([]);
      await page.close();
    }
  });
});
