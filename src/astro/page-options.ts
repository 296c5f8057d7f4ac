import type { AstroUserConfig } from 'astro';

/** How Astro makes a page, be it published or shown while it is being written. */
export const pageOptions = {
  output: 'static',
  trailingSlash: 'always',
  compressHTML: true,
  devToolbar: { enabled: false },
} as const satisfies AstroUserConfig;
