/// <reference lib="dom" />
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import PQueue from 'p-queue';
import type { Browser } from 'playwright-core';
import { CannotRun } from './cannot-run.ts';
import type { Paper } from './paper.ts';

/** A page of a published site to be printed. */
export interface PageToPrint {
  /** Path of its file on this disk. */
  readonly file: string;
  /** What the page is told beside its address: the machine that it is printed for. */
  readonly query: string;
}

/**
 * Prints pages several at a time. `done` is called after each, with what came of it. Throws CannotRun where a
 * picture of a page cannot be shown.
 */
export async function printPages<T extends PageToPrint>(
  browser: Browser,
  pages: readonly T[],
  paper: Paper,
  done: (page: T, pdf: Uint8Array) => Promise<void>,
): Promise<void> {
  const queue = new PQueue({ concurrency: Math.max(2, availableParallelism()) });
  await queue.addAll(
    pages.map((page) => async () => done(page, await printPage(browser, page, paper))),
  );
}

async function printPage(
  browser: Browser,
  { file, query }: PageToPrint,
  paper: Paper,
): Promise<Uint8Array> {
  const page = await browser.newPage();
  try {
    const address = pathToFileURL(file);
    address.search = query;
    await page.goto(address.href);
    // A picture that is fetched late would leave a hole on paper.
    const broken = await page.evaluate(async () => {
      const pictures = [...document.images];
      for (const picture of pictures) picture.loading = 'eager';
      const decoded = await Promise.allSettled(pictures.map((picture) => picture.decode()));
      return pictures
        .filter((_, i) => decoded[i]?.status === 'rejected')
        .map((picture) => picture.currentSrc || picture.src);
    });
    const [first] = broken;
    if (first !== undefined) throw brokenPicture(first, await page.title());
    return await page.pdf({ format: paper, tagged: true, outline: true });
  } finally {
    await page.close();
  }
}

function brokenPicture(address: string, title: string): CannotRun {
  const name = decodeURIComponent(new URL(address).pathname.replace(/^.*\//, ''));
  return new CannotRun(
    `The picture ${name} on the page “${title}” cannot be shown, and would leave a hole on paper.`,
    'Open the picture in a browser. Where it does not show there either, save it anew; then print again.',
  );
}
