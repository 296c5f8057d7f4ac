import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import {
  bundleScript,
  bundleStyle,
  pageScript,
  proofScript,
  proofStyle,
  searchIndexScript,
  searchPageScript,
  searchScripts,
} from '../../astro/index.ts';
import type { OpenBook } from '../../render/index.ts';

export interface Asset {
  readonly type: string;
  readonly text: string;
}

type MakeAsset = (book: OpenBook) => Promise<string>;

/** The scripts and styles of the pages, each made when it is first asked for. */
export class ProofAssets {
  readonly #makers = new Map<string, MakeAsset>();
  readonly #made = new Map<string, Promise<string>>();
  readonly #indexes = new WeakMap<OpenBook, Promise<string>>();

  /** `site` is the folder of Astro's sources. */
  constructor(site: string) {
    const [indexScript, searchScript] = searchScripts;
    const own = (path: string, make: () => Promise<string>): void => {
      this.#makers.set(path, () => this.#once(path, make));
    };
    for (const name of readdirSync(join(site, 'styles')))
      if (name.endsWith('.css')) own(`assets/${name}`, () => bundleStyle(`styles/${name}`));
    own(proofStyle, () => bundleStyle('styles/proof.css'));
    own(pageScript, () => bundleScript('scripts/proof-page.ts'));
    own(proofScript, () => bundleScript('scripts/proof.ts'));
    own(searchScript, searchPageScript);
    this.#makers.set(indexScript, (book) => this.#index(book));
  }

  /** The asset at a path without a leading slash; undefined where there is none. */
  async at(path: string, book: OpenBook): Promise<Asset | undefined> {
    const make = this.#makers.get(path);
    if (make === undefined) return undefined;
    const type = path.endsWith('.css') ? 'text/css' : 'text/javascript';
    return { type: `${type}; charset=utf-8`, text: await make(book) };
  }

  #once(path: string, make: () => Promise<string>): Promise<string> {
    const known = this.#made.get(path) ?? make();
    this.#made.set(path, known);
    return known;
  }

  #index(book: OpenBook): Promise<string> {
    const known = this.#indexes.get(book) ?? indexOf(book);
    this.#indexes.set(book, known);
    return known;
  }
}

/** Between one sheet and the next other pages are answered: a large manual takes seconds. */
async function indexOf(book: OpenBook): Promise<string> {
  const sheets = [];
  for (const sheet of book.sheets()) {
    sheets.push({ ...sheet });
    await setImmediate();
  }
  return searchIndexScript({ sheets, machines: book.machines() });
}
