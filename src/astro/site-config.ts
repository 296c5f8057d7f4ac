import type { AstroUserConfig } from 'astro';
import type { Book } from '../render/index.ts';
import { clientScripts } from './client-scripts.ts';
import { pageOptions } from './page-options.ts';
import { tallybolt } from './tallybolt.ts';

/**
 * How Astro builds the site, whoever starts it: plain static pages in folders, every style and script
 * in a file of its own (the pages forbid inline ones).
 */
export function siteConfig(book: Book): AstroUserConfig {
  return {
    srcDir: './site',
    publicDir: './site/public',
    ...pageOptions,
    build: { format: 'directory', assets: 'assets', inlineStylesheets: 'never' },
    integrations: [tallybolt({ book }), clientScripts(book)],
    // Tablets in workshops are old: what their browsers cannot read is written in another way.
    vite: {
      build: { assetsInlineLimit: 0, cssTarget: ['chrome105', 'firefox121', 'safari16'] },
    },
  };
}
