/** One element of a page, read back from its HTML. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Its text as it reads: references resolved, no-break spaces as spaces. */
  readonly text: string;
  /** All elements inside it, outer before inner. */
  readonly inner: readonly Element[];
}

/** Elements without an end tag (HTML Living Standard, 13.1.2). */
const empty = new Set(['br', 'hr', 'img', 'input', 'wbr']);

const tag = /<(\/?)([a-z][a-z0-9]*)((?: [a-zA-Z][a-zA-Z0-9-]*(?:="[^"]*")?)*)>/y;
const text = /[^<]+/y;
const attribute = / ([a-zA-Z][a-zA-Z0-9-]*)(?:="([^"]*)")?/g;

/**
 * Reads HTML that is nothing but text and tags with double-quoted attributes, the part of the language that
 * no browser reads in another way. Anything else in it, such as a comment, a stray `<` or an unclosed element, is an error.
 */
export function elementsOf(html: string): readonly Element[] {
  const root = { name: '', attributes: {}, text: '', inner: [] as Element[] };
  const open = [root];
  for (let at = 0; at < html.length; ) {
    text.lastIndex = tag.lastIndex = at;
    const words = text.exec(html);
    const found = words ?? tag.exec(html);
    if (found === null) throw new Error(`no tag of a sheet: ${html.slice(at, at + 60)}`);
    at += found[0].length;
    if (words !== null) {
      for (const one of open) one.text += plain(words[0]);
      continue;
    }
    const [, slash, name = '', written = ''] = found;
    if (slash === '/') {
      const closed = open.pop();
      if (closed?.name !== name) throw new Error(`</${name}> closes <${closed?.name}>`);
      continue;
    }
    const pairs = [...written.matchAll(attribute)].map(([, key = '', value = '']) => [
      key,
      plain(value),
    ]);
    if (new Set(pairs.map(([key]) => key)).size < pairs.length)
      throw new Error(`an attribute twice: ${found[0]}`);
    const element = {
      name,
      attributes: Object.fromEntries(pairs),
      text: '',
      inner: [] as Element[],
    };
    for (const one of open) one.inner.push(element);
    if (!empty.has(name)) open.push(element);
  }
  if (open.length > 1) throw new Error(`<${open.at(-1)?.name}> is not closed`);
  return root.inner;
}

/** Elements with a class. */
export function withClass(elements: readonly Element[], name: string): readonly Element[] {
  return elements.filter((one) => (one.attributes.class ?? '').split(' ').includes(name));
}

/** The elements of a sheet without those of the jobs that are printed in place on it. */
export function ownText(elements: readonly Element[]): readonly Element[] {
  const others = new Set(withClass(elements, 'in-place').flatMap(({ inner }) => inner));
  return elements.filter((one) => !others.has(one));
}

export function byId(elements: readonly Element[], id: string): Element {
  const found = elements.filter((one) => one.attributes.id === id);
  const [only] = found;
  if (only === undefined || found.length > 1) throw new Error(`${found.length} elements #${id}`);
  return only;
}

function plain(written: string): string {
  return written
    .replace(/&#x([0-9a-f]+);/gi, (_, code: string) =>
      String.fromCodePoint(Number.parseInt(code, 16)),
    )
    .replaceAll('\u00a0', ' ');
}
