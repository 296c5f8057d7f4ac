import { type XmlElement, xml, xmlDocument } from '../report/index.ts';
import { compareText } from '../source/index.ts';
import { pageAddress } from './address-code.ts';

/** The protocol's most addresses in one file. */
const mostAddresses = 50_000;

export interface SitemapFile {
  readonly name: string;
  readonly content: string;
}

/**
 * The sitemap of a published manual, by the protocol 0.9 of sitemaps.org: `sitemap.xml`, which for very many
 * pages lists further files. `pages` are paths from the site's root.
 */
export function sitemap(address: string, pages: readonly string[]): readonly SitemapFile[] {
  const locations = [...pages].sort(compareText).map((page) => locate('url', address, page));
  if (locations.length <= mostAddresses) return [file('sitemap.xml', 'urlset', locations)];
  const count = Math.ceil(locations.length / mostAddresses);
  const parts = Array.from({ length: count }, (_, i) =>
    file(
      `sitemap-${i + 1}.xml`,
      'urlset',
      locations.slice(i * mostAddresses, (i + 1) * mostAddresses),
    ),
  );
  const index = parts.map(({ name }) => locate('sitemap', address, name));
  return [file('sitemap.xml', 'sitemapindex', index), ...parts];
}

const locate = (kind: 'url' | 'sitemap', address: string, path: string): XmlElement =>
  xml(kind, {}, [xml('loc', {}, [pageAddress(address, path)])]);

function file(
  name: string,
  root: 'urlset' | 'sitemapindex',
  children: readonly XmlElement[],
): SitemapFile {
  const xmlns = 'http://www.sitemaps.org/schemas/sitemap/0.9';
  const content = xmlDocument(xml(root, { xmlns }, children), { isSpaced: () => true });
  return { name, content };
}
