import { readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { LivePages } from '../../astro/index.ts';
import type { Sheet } from '../../render/index.ts';
import { missingSheet } from './missing-sheet.ts';
import type { PageFindings, PageOf } from './page-findings.ts';
import type { Desk } from './proof-desk.ts';

export interface MadePage {
  readonly status: 200 | 404;
  readonly html: string;
}

/** Makes the pages of the proof from the desk as it is when they are asked for. */
export class ProofPages {
  readonly #live: LivePages;
  readonly #plain: ReadonlyMap<string, string>;

  /** `site` is the folder of Astro's sources. */
  constructor(live: LivePages, site: string) {
    this.#live = live;
    this.#plain = plainPages(join(site, 'pages'));
  }

  /** The page at a path with slashes at both ends; undefined where the site has no such page. */
  async make(
    path: string,
    desk: Desk,
    findings: PageFindings,
    { token, opens }: { readonly token: string; readonly opens: boolean },
  ): Promise<MadePage | undefined> {
    const found = await this.#find(path, desk);
    if (found === undefined) return undefined;
    const { file, props, of, book = desk.book, status = 200 } = found;
    const proof = findings.of(of, token, opens);
    const html = await this.#live.render({ file, path, props, book, proof });
    return { status, html };
  }

  async #find(path: string, desk: Desk): Promise<Found | undefined> {
    const plain = this.#plain.get(path);
    if (plain !== undefined) return { file: plain, props: {}, of: nothing };
    const [, folder = '', id = '', more] = path.split('/');
    if (id === '' || more !== '') return undefined;
    if (folder === 'procedures') return sheetAt(id, desk);
    if (folder === 'machines') {
      const machine = desk.book.machine(id);
      return machine && { file: everyPage, props: { machine }, of: nothing };
    }
    if (folder !== 'rules') return undefined;
    const families = await this.#live.paths(familyPage, desk.book);
    const family = families.find(({ params }) => params.family === id);
    return family && { file: familyPage, props: family.props, of: nothing };
  }
}

const everyPage = 'pages/[...page].astro';
const familyPage = 'pages/rules/[family].astro';
const nothing: PageOf = { file: undefined, held: undefined };

interface Found {
  readonly file: string;
  readonly props: Readonly<Record<string, unknown>>;
  readonly of: PageOf;
  readonly book?: Desk['book'];
  readonly status?: 404;
}

function sheetAt(id: string, desk: Desk): Found {
  const sheet = desk.book.sheet(id);
  const file = desk.linked.procedures.get(id)?.procedure.file;
  if (sheet !== undefined)
    return { file: everyPage, props: propsOf(sheet), of: { file, held: undefined } };
  const kept = desk.held.get(id);
  const before = kept?.book.sheet(id);
  if (kept === undefined || before === undefined) {
    const props = { missing: missingSheet(id, desk) };
    return { file: 'proof/missing-sheet.astro', props, of: nothing, status: 404 };
  }
  const held = {
    words: `${kept.file} cannot be read as a procedure now.`,
    advice:
      'This is the sheet as it last could be read. The findings below say what keeps it from being read.',
  };
  return {
    file: everyPage,
    props: propsOf(before),
    of: { file: kept.file, held },
    book: kept.book,
  };
}

const propsOf = (sheet: Sheet) => ({
  sheet: { id: sheet.id, data: sheet, rendered: { html: sheet.bodyHtml } },
});

/** The pages that are one file each, by path: `/charts/` for `charts.astro`, `/guide/` for `guide/index.astro`. */
function plainPages(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.split(sep).join('/'))
    .filter((name) => name.endsWith('.astro') && !name.includes('['));
  return new Map(
    files.map((name) => {
      const stem = name.replace(/\.astro$/, '').replace(/(^|\/)index$/, '');
      return [stem === '' ? '/' : `/${stem}/`, `pages/${name}`];
    }),
  );
}
