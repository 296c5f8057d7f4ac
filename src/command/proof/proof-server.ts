import { randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join } from 'node:path';
import { text as textOf } from 'node:stream/consumers';
import { placeText } from '../../astro/index.ts';
import { say, send } from './answer.ts';
import type { Editor } from './editor.ts';
import { listen } from './listen.ts';
import { News } from './news.ts';
import { PageFindings } from './page-findings.ts';
import type { ProofAssets } from './proof-assets.ts';
import type { Desk } from './proof-desk.ts';
import type { ProofPages } from './proof-page.ts';

export interface ProofParts {
  readonly folder: string;
  readonly pages: ProofPages;
  readonly assets: ProofAssets;
  readonly editor: Editor | undefined;
}

/** The site of a manual while it is being written, for browsers on this machine. */
export class ProofServer {
  readonly #parts: ProofParts;
  readonly #news = new News();
  readonly #token = randomBytes(24).toString('base64url');
  #desk: Desk;
  #findings: PageFindings;
  #hosts: readonly string[] = [];

  constructor(parts: ProofParts, desk: Desk) {
    this.#parts = parts;
    this.#desk = desk;
    this.#findings = new PageFindings(desk);
  }

  /** Shows another state from now on, and tells the open pages. */
  show(desk: Desk): void {
    this.#desk = desk;
    this.#findings = new PageFindings(desk);
    this.#news.tell(desk.edition);
  }

  async listen(port: number): Promise<{ readonly port: number; close(): Promise<void> }> {
    const { server, port: found } = await listen(port, (request, answer) => {
      this.#answer(request, answer).catch((error: unknown) => {
        const words = error instanceof Error ? error.message : String(error);
        if (answer.headersSent) answer.end();
        else say(answer, 500, `The page cannot be made: ${words}`);
      });
    });
    this.#hosts = [`127.0.0.1:${found}`, `localhost:${found}`];
    return {
      port: found,
      close: () =>
        new Promise((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        }),
    };
  }

  async #answer(request: IncomingMessage, answer: ServerResponse): Promise<void> {
    // A name of the outside that leads here would let its page read the manual.
    if (!this.#hosts.includes(request.headers.host ?? ''))
      return say(answer, 421, 'The proof answers to 127.0.0.1 and localhost only.');
    const path = pathOf(request.url ?? '/');
    if (path === undefined) return say(answer, 400, 'That is no address of the proof.');
    if (path === '/proof/open') return this.#open(request, answer);
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return say(answer, 405, 'The proof only shows pages.');
    if (path === '/proof/news') {
      answer.setHeader('cache-control', 'no-store');
      return this.#news.add(answer, this.#desk.edition);
    }
    if (path.endsWith('/') || path.endsWith('/index.html'))
      return this.#page(path.replace(/index\.html$/, ''), answer);
    const file = path.slice(1);
    const asset = await this.#parts.assets.at(file, this.#desk.book);
    if (asset !== undefined) return send(answer, 200, asset.type, asset.text);
    return this.#file(file, answer);
  }

  async #page(path: string, answer: ServerResponse): Promise<void> {
    const opens = this.#parts.editor !== undefined;
    const asked = { token: this.#token, opens };
    const page = await this.#parts.pages.make(path, this.#desk, this.#findings, asked);
    if (page === undefined) return say(answer, 404, 'The manual has no such page.');
    send(answer, page.status, 'text/html; charset=utf-8', page.html);
  }

  /** A picture that the pages show, or a file beside a sheet; nothing else of the folder goes out. */
  async #file(path: string, answer: ServerResponse): Promise<void> {
    const { book, files } = this.#desk;
    const [, id = ''] = /^procedures\/([^/]+)\//.exec(path) ?? [];
    const sheet = book.sheet(id);
    const beside = sheet && [sheet.pullFiles.csv, sheet.pullFiles.json, sheet.dataFile];
    const data = beside?.find(({ href }) => href === path);
    const type = types[extname(path)];
    if (data !== undefined && type !== undefined) return send(answer, 200, type, data.content);
    const figure = book.frame.figures.find(({ to }) => to === path);
    const isFit = files.pictures?.some((one) => one.path === figure?.from && one.state === 'fit');
    if (figure === undefined || !isFit || type === undefined)
      return say(answer, 404, 'The manual has no such page.');
    send(answer, 200, type, await readFile(join(this.#parts.folder, figure.from)));
  }

  /** Opens a place that the report of now names, for a page of this proof. */
  async #open(request: IncomingMessage, answer: ServerResponse): Promise<void> {
    const { editor, folder } = this.#parts;
    const token = request.headers['x-tallybolt-proof'];
    request.resume();
    if (request.method !== 'POST' || !isSame(token, this.#token))
      return say(answer, 403, 'Only a page of this proof may open places. Load the page again.');
    const asked = (await textOf(request)).slice(0, 4096);
    const place = this.#findings.places.find((one) => placeText(one) === asked);
    if (place === undefined)
      return say(answer, 404, `No finding is at ${asked} any more. Wait for the page to follow.`);
    if (editor === undefined) return say(answer, 409, 'The proof knows no editor.');
    const { line, column } = place.start;
    const fault = await editor.open(join(folder, place.file), line, column);
    return fault === undefined
      ? say(answer, 200, `Opened in the editor: ${asked}`)
      : say(answer, 502, `The editor did not open ${asked}: ${fault}.`);
  }
}

const types: Readonly<Record<string, string>> = {
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.jpeg': 'image/jpeg',
  '.webp': 'image/webp',
  '.csv': 'text/csv; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
};

/** The path of an address; undefined where it cannot be read. */
function pathOf(address: string): string | undefined {
  try {
    return decodeURIComponent(new URL(address, 'http://127.0.0.1').pathname);
  } catch {
    return undefined;
  }
}

function isSame(given: string | readonly string[] | undefined, token: string): boolean {
  if (typeof given !== 'string') return false;
  const [a, b] = [Buffer.from(given), Buffer.from(token)];
  return a.length === b.length && timingSafeEqual(a, b);
}
