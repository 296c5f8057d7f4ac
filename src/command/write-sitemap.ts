import { readdir, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { type Book, sitemap } from '../render/index.ts';

/** Writes the sitemap of all pages of a built site, where the manual says at which address it can be read. A draft is not for search engines. */
export async function writeSitemap({ address, draft }: Book, site: string): Promise<void> {
  if (address === undefined || draft) return;
  const entries = await readdir(site, { recursive: true, withFileTypes: true });
  const pages = entries
    .filter((entry) => entry.isFile() && entry.name.endsWith('.html'))
    .map((entry) => relative(site, join(entry.parentPath, entry.name)).split(sep).join('/'));
  for (const { name, content } of sitemap(address, pages))
    await writeFile(join(site, name), content);
}
