/** The script of every page, which runs before the page is drawn. Paths from the site's root. */
export const pageScript = 'assets/page.js';

/** The script of the sheets. It reads them as they were published, so that it runs before those that change them. */
export const sheetScript = 'assets/sheet.js';

/** The script of all pages that show what applies to the chosen machine. It runs before they are painted. */
export const variantsScript = 'assets/variants.js';

/** The script and the style of the pages of the proof, which are never published. */
export const proofScript = 'assets/proof.js';
export const proofStyle = 'assets/proof.css';

/** The index of the search, then the script that asks it. */
export const searchScripts = ['assets/search-index.js', 'assets/search.js'] as const;

/**
 * The way from one page of the site to another, such that it also works in a folder opened from disk:
 * `relativeLink('/sheets/make-safe/', 'machines/press/#lid')` is `../../machines/press/index.html#lid`.
 *
 * @param from path of the page that holds the link, with a leading and a trailing slash
 * @param href path of the target from the site's root, without a leading slash
 */
export function relativeLink(from: string, href: string): string {
  const hash = href.indexOf('#');
  const path = hash < 0 ? href : href.slice(0, hash);
  const fragment = hash < 0 ? '' : href.slice(hash);
  const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
  if (fragment !== '' && `/${file}` === `${from}index.html`) return fragment;
  return `${upToRoot(from)}${file}${fragment}`;
}

/** As many `../` as lead from a page to the site's root; `./` at the root itself. */
export function upToRoot(from: string): string {
  const depth = from.split('/').filter((part) => part !== '').length;
  return depth === 0 ? './' : '../'.repeat(depth);
}
