/// <reference lib="dom" />
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../../src/command/browser.ts';
import { procedureHref } from '../../src/render/site-links.ts';
import { type PdfPage, readPdf } from '../pdf-text.ts';
import { faintTexts } from './contrast.ts';
import { type DemoBench, makeDemoBench } from './demo-bench.ts';
import { overlaps } from './overlaps.ts';
import { placesOf, stepsOnSheet } from './printed-steps.ts';

let demo: DemoBench;
let browser: Browser;

beforeAll(async () => {
  [demo, browser] = await Promise.all([makeDemoBench(), launchBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await demo.clear();
});

const formats = ['A4', 'Letter'] as const;
const sheets = [
  'replace-feed-rollers',
  'replace-hub-bearings',
  'replace-drum-bearings',
  'change-blades',
];

async function open(id: string): Promise<Page> {
  const page = await browser.newPage();
  await page.emulateMedia({ media: 'print' });
  await page.goto(pathToFileURL(join(demo.site, procedureHref(id))).href);
  return page;
}

/** NIST SP 811, appendix B.8: newton metres in one pound-force foot. */
const poundFoot = 1.3558179;

describe.each(sheets)('%s on paper', (id) => {
  let page: Page;
  let printed: Readonly<Record<(typeof formats)[number], readonly PdfPage[]>>;
  beforeAll(async () => {
    page = await open(id);
    const print = async (format: string) => (await readPdf(await page.pdf({ format }))).pages;
    printed = { A4: await print('A4'), Letter: await print('Letter') };
  });
  afterAll(() => page.close());

  test.each(formats)('%s: pages are counted, and each names the sheet', (format) => {
    const pages = printed[format];
    const { title = '', documentNumber = '' } = demo.book.sheets.find((one) => one.id === id) ?? {};
    expect(pages.length).toBeGreaterThan(2);
    for (const [i, { text }] of pages.entries()) {
      expect(text).toContain(`Page${i + 1}of${pages.length}`);
      expect(text.startsWith(title.replaceAll(' ', ''))).toBe(true);
      expect(text).toContain(documentNumber.replaceAll(' ', ''));
    }
  });

  test.each(formats)(
    '%s: no step is split, and a hazard is on the page of its step',
    async (format) => {
      const steps = await stepsOnSheet(page);
      expect(steps.length).toBeGreaterThan(20);
      const places = placesOf(steps, printed[format]);
      expect([...places.values()].filter((place) => typeof place === 'string')).toEqual([]);
      // A hazard is part of the texts of its step, which stands on one page; there is none beside the steps.
      const hazards = page.locator('.work .hazard');
      expect(await hazards.count()).toBeGreaterThan(1);
      expect(await page.locator('.work .hazard:not(li.step *)').count()).toBe(0);
      expect(await page.locator('.work .body > .steps ~ .hazard').count()).toBe(0);
    },
  );

  test.each(formats)('%s: nothing is printed over something else or beside the paper', (format) => {
    for (const [i, { pieces, width }] of printed[format].entries()) {
      expect(overlaps(pieces), `page ${i + 1}`).toEqual([]);
      for (const { text, x, right } of pieces) {
        expect(x, text).toBeGreaterThan(0);
        expect(right, text).toBeLessThan(width);
      }
    }
  });

  test('every torque beside a step is that of the catalogue, in both units', async () => {
    const boxes = await page.locator('.work .box.torque').evaluateAll((all) =>
      all.map((box) => ({
        item: box.getAttribute('data-item') ?? '',
        isCheck: box.querySelector('.check') !== null,
        values: [...box.querySelectorAll('.value')].map((value) =>
          ['.first', '.second'].map((part) => value.querySelector(part)?.textContent ?? ''),
        ),
      })),
    );
    expect(boxes.length).toBeGreaterThan(0);
    const text = printed.A4.map((one) => one.text).join('');
    for (const { item, isCheck, values } of boxes) {
      const written = torqueOf(id, item);
      expect(
        values.map(([first = '']) => plain(first)),
        item,
      ).toEqual(isCheck ? written.slice(-1) : written);
      for (const [first = '', second = ''] of values) {
        expect(text).toContain(`${first}${second}`.replaceAll(/\s/g, ''));
        const [newtons, pounds] = [figureIn(first), figureIn(second)];
        const digit = second.includes('.') ? 0.1 : 1;
        expect(Math.abs(newtons / poundFoot - pounds), `${first} ${second}`).toBeLessThanOrEqual(
          digit / 2,
        );
      }
    }
  });
});

test('a step that is split, and a hazard on another page than its step, are found', async () => {
  const page = await open('change-blades');
  await page.evaluate(() => {
    for (const part of document.querySelectorAll<HTMLElement>('.work, .work *')) {
      part.style.breakInside = 'auto';
      part.style.breakAfter = 'auto';
      if (part.matches('li.step > .body > .hazard:first-child')) part.style.breakAfter = 'page';
    }
  });
  const steps = await stepsOnSheet(page);
  const { pages } = await readPdf(await page.pdf({ format: 'A4' }));
  const parted = [...placesOf(steps, pages).values()].filter((place) => typeof place === 'string');
  expect(parted.length).toBeGreaterThanOrEqual(
    await page.locator('.work li.step > .body > .hazard:first-child').count(),
  );
  await page.close();
});

describe('in black and white', () => {
  test('the levels of hazards are told by word, triangle and frame', async () => {
    const page = await browser.newPage();
    await page.emulateMedia({ media: 'print' });
    await page.goto(pathToFileURL(join(demo.site, 'signal-words/index.html')).href);
    const looks = await page.locator('.hazard').evaluateAll((panels) =>
      panels.map((panel) => {
        const style = getComputedStyle(panel);
        return [
          panel.querySelector('.word')?.textContent,
          style.borderTopStyle,
          Math.round(Number.parseFloat(style.borderTopWidth)),
          style.borderTopColor,
          panel.querySelector('svg.alert') !== null,
        ];
      }),
    );
    const black = 'rgb(0, 0, 0)';
    expect(looks).toEqual([
      ['DANGER', 'solid', 6, black, true],
      ['WARNING', 'solid', 4, black, true],
      ['CAUTION', 'solid', 3, black, true],
      ['NOTICE', 'solid', 2, black, false],
    ]);
    expect(await faintTexts(page)).toEqual([]);
    await page.close();
  });

  test('the kinds of boxes are told by frame and words', async () => {
    const frames = new Map<string, string>();
    for (const id of ['change-hydraulic-oil', 'replace-brake-shoes', 'replace-hub-bearings']) {
      const page = await open(id);
      const boxes = await page.locator('.work .box').evaluateAll((all) =>
        all.map((box) => {
          const {
            borderTopStyle,
            borderTopWidth,
            borderLeftWidth,
            borderLeftColor,
            borderTopColor,
          } = getComputedStyle(box);
          const isFramed = Number.parseFloat(borderLeftWidth) > 0;
          return {
            kind: box.classList.item(1) ?? '',
            frame: [borderTopStyle, borderTopWidth, borderLeftWidth].join(' '),
            colours: isFramed ? [borderLeftColor, borderTopColor] : [],
            words: box.textContent?.trim() ?? '',
          };
        }),
      );
      for (const { kind, frame, colours, words } of boxes) {
        expect(words, kind).not.toBe('');
        for (const colour of colours) expect(colour, kind).toBe('rgb(0, 0, 0)');
        frames.set(kind, frame);
      }
      expect(await faintTexts(page), id).toEqual([]);
      await page.close();
    }
    const telling = ['torque', 'fluid', 'reading', 'mass'].map((kind) => frames.get(kind) ?? kind);
    expect(new Set(telling).size).toBe(4);
    expect(telling).not.toContain('mass');
  });
});

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const figureIn = (text: string): number => Number(/\d+(?:\.\d+)?/.exec(text)?.[0]);

/** The torque of an item as the catalogue has it written, stage by stage. */
function torqueOf(procedure: string, id: string): readonly string[] {
  const item = demo.checked.linked.procedures.get(procedure)?.catalogue.items.get(id);
  const has = item?.kind === 'fastener' || item?.kind === 'connection' ? item.torque : undefined;
  return has?.written ?? [`${id} has no torque`];
}
