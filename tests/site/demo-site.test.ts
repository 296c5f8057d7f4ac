import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkFolder } from '../../src/command/check-folder.ts';
import { packageFile } from '../../src/command/package-root.ts';
import { publishSite } from '../../src/command/publish-site.ts';
import { makeBook } from '../../src/render/index.ts';
import { type Bench, makeBench, textsBelow } from './published.ts';
import { leadsSomewhere, references } from './references.ts';

let bench: Bench;
let site: ReadonlyMap<string, string>;
let pages: readonly (readonly [path: string, html: string])[];

beforeAll(async () => {
  bench = await makeBench();
  const { linked, report, files, folder } = await checkFolder(packageFile('content'));
  const book = makeBook(linked, report, { draft: false });
  const figures = book.figures
    .filter(({ from }) => files.others.includes(from))
    .map(({ from, to }) => ({ path: to, absolute: join(folder, from) }));
  await publishSite(book, figures, join(bench.folder, 'demo'));
  site = await textsBelow(join(bench.folder, 'demo'));
  pages = [...site].filter(([path]) => path.endsWith('.html'));
});
afterAll(() => bench.clear());

describe('the site of the demo manual', () => {
  test('has no link and no anchor that leads nowhere', () => {
    const broken = pages.flatMap(([path, html]) =>
      references(html)
        .filter((ref) => !/^(?:https?:|mailto:|tel:)/.test(ref) && !leadsSomewhere(site, path, ref))
        .map((ref) => `${path}: ${ref}`),
    );
    expect(broken).toEqual([]);
  });

  test('leads from the contents page to every page', () => {
    const reached = new Set(['index.html']);
    for (const path of reached) {
      for (const ref of references(site.get(path) ?? '')) {
        const url = new URL(ref, `file:///site/${path}`);
        const target = decodeURIComponent(url.pathname.slice('/site/'.length));
        if (url.protocol === 'file:' && target.endsWith('.html')) reached.add(target);
      }
    }
    expect(pages.map(([path]) => path).filter((path) => !reached.has(path))).toEqual([]);
  });

  test('has every id once a page', () => {
    for (const [path, html] of pages) {
      const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
      expect(ids, path).toEqual([...new Set(ids)]);
    }
  });

  test('says in words what each picture shows', () => {
    const pictures = pages.flatMap(([path, html]) =>
      [...html.matchAll(/<(?:svg|img)\b[^>]*>/g)].map(([tag]) => [path, tag] as const),
    );
    expect(pictures.length).toBeGreaterThan(100);
    const silent = pictures.filter(
      ([, tag]) => !/ (?:aria-label|alt)="[^"]+"| aria-hidden="true"/.test(tag),
    );
    expect(silent).toEqual([]);
  });

  test('keeps the page of a machine with more than 200 entries light', () => {
    const machine = site.get('machines/brush-chipper/index.html') ?? '';
    expect(machine.match(/<tr id=/g)?.length).toBeGreaterThan(200);
    expect(machine.length).toBeLessThan(160 * 1024);
  });
});
