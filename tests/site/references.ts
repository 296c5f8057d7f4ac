/** Every address that a page names, but the empty icon. */
export function references(html: string): string[] {
  return [...html.matchAll(/\s(?:href|src)="([^"]*)"/g)].flatMap(([, ref]) =>
    ref === undefined || ref === 'data:,' ? [] : [ref.replaceAll('&amp;', '&')],
  );
}

/** True where a reference of a page leads to a file of the site, and to an element in it where it names one. */
export function leadsSomewhere(
  site: ReadonlyMap<string, string>,
  path: string,
  reference: string,
): boolean {
  const url = new URL(reference, `file:///site/${path}`);
  if (!url.pathname.startsWith('/site/')) return false;
  const target = site.get(decodeURIComponent(url.pathname.slice('/site/'.length)));
  if (target === undefined) return false;
  return url.hash === '' || target.includes(` id="${decodeURIComponent(url.hash.slice(1))}"`);
}
