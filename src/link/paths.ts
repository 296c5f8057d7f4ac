/** Where a link of a file leads: inside the manual, outside its folder, or to another host. */
export type Target =
  | { readonly kind: 'file'; readonly path: string; readonly anchor: string | undefined }
  | { readonly kind: 'outside' }
  | { readonly kind: 'elsewhere' };

/** Resolves a link written in `from`, a path relative to the manual's folder. */
export function targetOf(from: string, url: string): Target {
  if (/^(https?|mailto|tel):/i.test(url)) return { kind: 'elsewhere' };
  if (/^[a-z][a-z0-9+.-]*:/i.test(url) || url.startsWith('//') || url.includes('\\'))
    return { kind: 'outside' };
  const [written = '', anchor] = url.split('#', 2);
  const plain = decode(written.split('?', 1)[0] ?? '');
  if (plain === '') return { kind: 'file', path: from, anchor: emptyAsNone(anchor) };
  if (plain.startsWith('/')) return { kind: 'outside' };
  const parts = from.split('/').slice(0, -1);
  for (const part of plain.split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.pop() === undefined) return { kind: 'outside' };
  }
  return { kind: 'file', path: parts.join('/'), anchor: emptyAsNone(anchor) };
}

const emptyAsNone = (text: string | undefined): string | undefined =>
  text ? decode(text) : undefined;

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
