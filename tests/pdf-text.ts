import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One printed page: its words with where they stand, and what its links lead to. */
export interface PdfPage {
  /** All of its text in the order of drawing, without white space. */
  readonly text: string;
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly PdfPiece[];
  readonly links: readonly PdfLink[];
}

/** Text of one line; `x` and `right` from the left edge, `y` of its base from the top, `size` of its letters, in points. */
export interface PdfPiece {
  readonly text: string;
  readonly x: number;
  readonly right: number;
  readonly y: number;
  readonly size: number;
}

export interface PdfLink {
  readonly url: string | undefined;
  /** Another PDF file. */
  readonly file: string | undefined;
}

export interface PdfDocument {
  readonly title: string;
  readonly isTagged: boolean;
  /** Bookmarks, outer before inner. */
  readonly bookmarks: readonly string[];
  readonly pages: readonly PdfPage[];
}

/** The text of each page of a PDF, without white space, in the order of drawing. */
export async function pdfPages(pdf: Uint8Array): Promise<string[]> {
  return (await readPdf(pdf)).pages.map(({ text }) => text);
}

export async function readPdf(pdf: Uint8Array): Promise<PdfDocument> {
  const loading = getDocument({ data: Uint8Array.from(pdf), verbosity: 0 });
  try {
    const document = await loading.promise;
    const { info } = await document.getMetadata();
    const marked = await document.getMarkInfo();
    const pages: PdfPage[] = [];
    for (let i = 1; i <= document.numPages; i += 1) {
      const page = await document.getPage(i);
      const { width, height } = page.getViewport({ scale: 1 });
      const { items } = await page.getTextContent();
      const pieces = items.flatMap((item): PdfPiece[] =>
        'str' in item && item.str.trim() !== ''
          ? [
              {
                text: item.str,
                x: item.transform[4],
                right: item.transform[4] + item.width,
                y: height - item.transform[5],
                size: Math.hypot(item.transform[2], item.transform[3]),
              },
            ]
          : [],
      );
      const links = (await page.getAnnotations())
        .filter(({ subtype }) => subtype === 'Link')
        .map(
          ({ url, unsafeUrl }): PdfLink => ({
            url,
            file: url === undefined ? unsafeUrl?.replace(/#.*$/, '') : undefined,
          }),
        );
      const text = pieces.map((piece) => piece.text.replaceAll(/\s/g, '')).join('');
      pages.push({ text, width, height, pieces, links });
    }
    const title = 'Title' in info && typeof info.Title === 'string' ? info.Title : '';
    return {
      title,
      isTagged: isMarked(marked),
      bookmarks: titles(await document.getOutline()),
      pages,
    };
  } finally {
    await loading.destroy();
  }
}

interface Bookmark {
  readonly title: string;
  readonly items: readonly Bookmark[];
}

const titles = (bookmarks: readonly Bookmark[] | null): string[] =>
  (bookmarks ?? []).flatMap(({ title, items }) => [title, ...titles(items)]);

/** The library says that it gives an object, and gives a map. */
function isMarked(info: object | null): boolean {
  const entries = info instanceof Map ? [...info] : Object.entries(info ?? {});
  return entries.some(([key, value]) => key === 'Marked' && value === true);
}
