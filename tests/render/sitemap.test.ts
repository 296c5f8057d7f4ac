import { parseXml, XmlElement } from '@rgrove/parse-xml';
import { expect, test } from 'vitest';
import { sitemap } from '../../src/render/index.ts';

/** Sitemap protocol 0.9, sitemaps.org/protocol.html: names, name space, the most addresses in a file. */
const nameSpace = 'http://www.sitemaps.org/schemas/sitemap/0.9';

function readBack(content: string) {
  const { root } = parseXml(content);
  if (root === null) throw new Error('no root');
  const entries = root.children.filter((child) => child instanceof XmlElement);
  return {
    root: root.name,
    xmlns: root.attributes.xmlns,
    entries: [...new Set(entries.map(({ name }) => name))],
    addresses: entries.map(({ text }) => text.trim()),
  };
}

test('pages are listed in order, at whole addresses that are escaped for URLs and for XML', () => {
  const pages = ['procedures/b/index.html', 'index.html', 'procedures/a&b <c>/index.html'];
  const [only, ...others] = sitemap('https://m.example/x?y=1', pages);
  expect(others).toEqual([]);
  expect(only?.name).toBe('sitemap.xml');
  expect(readBack(only?.content ?? '')).toEqual({
    root: 'urlset',
    xmlns: nameSpace,
    entries: ['url'],
    addresses: [
      'https://m.example/index.html',
      'https://m.example/procedures/a&b%20%3Cc%3E/index.html',
      'https://m.example/procedures/b/index.html',
    ],
  });
});

test('more pages than one file may have go to several, with an index', () => {
  const pages = Array.from({ length: 50_001 }, (_, i) => `p/${String(i).padStart(5, '0')}.html`);
  const [index, ...parts] = sitemap('https://m.example/', pages.toReversed());
  expect(readBack(index?.content ?? '')).toEqual({
    root: 'sitemapindex',
    xmlns: nameSpace,
    entries: ['sitemap'],
    addresses: ['https://m.example/sitemap-1.xml', 'https://m.example/sitemap-2.xml'],
  });
  expect(parts.map(({ name }) => name)).toEqual(['sitemap-1.xml', 'sitemap-2.xml']);
  const listed = parts.map(({ content }) => readBack(content).addresses);
  expect(listed.map(({ length }) => length)).toEqual([50_000, 1]);
  expect(listed.flat()).toEqual(pages.map((page) => `https://m.example/${page}`));
});
