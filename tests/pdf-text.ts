import { inflateSync } from 'node:zlib';

/**
 * The text of each page of a PDF that Chromium wrote, without white space, in the order of drawing.
 * Reads what that writer uses of ISO 32000-1: plain objects, deflated streams, hex strings in fonts
 * with a ToUnicode map. Throws where a font has none, so that no text is lost unseen.
 */
export function pdfPages(pdf: Uint8Array): string[] {
  const file = Buffer.from(pdf).toString('latin1');
  const objects = new Map(
    [...file.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id, body]) => [
      id ?? '',
      body ?? '',
    ]),
  );
  const bodyOf = (id: string): string => {
    const body = objects.get(id);
    if (body === undefined) throw new Error(`The PDF has no object ${id}.`);
    return body;
  };
  const fonts = new Map<string, ReadonlyMap<string, string>>();
  const fontOf = (id: string): ReadonlyMap<string, string> => {
    const map = fonts.get(id) ?? characterMap(streamOf(bodyOf(reference(bodyOf(id), 'ToUnicode'))));
    fonts.set(id, map);
    return map;
  };
  return [...objects.values()]
    .filter((body) => /\/Type \/Page\b/.test(body))
    .map((page) => {
      const names = [...page.matchAll(/\/(F\d+) (\d+) 0 R/g)];
      const byName = new Map(names.map(([, name, id]) => [name ?? '', fontOf(id ?? '')]));
      return drawnText(streamOf(bodyOf(reference(page, 'Contents'))), byName);
    });
}

function reference(body: string, key: string): string {
  const id = new RegExp(`/${key} (\\d+) 0 R`).exec(body)?.[1];
  if (id === undefined)
    throw new Error(`An object of the PDF has no ${key}: ${body.slice(0, 200)}`);
  return id;
}

function streamOf(body: string): string {
  const start = body.indexOf('stream\n') + 'stream\n'.length;
  const bytes = Buffer.from(body.slice(start, body.lastIndexOf('\nendstream')), 'latin1');
  return body.includes('/FlateDecode')
    ? inflateSync(bytes).toString('latin1')
    : bytes.toString('latin1');
}

/** Glyph numbers to characters, from the `bfchar` and `bfrange` lists of a ToUnicode map. */
function characterMap(source: string): ReadonlyMap<string, string> {
  const map = new Map<string, string>();
  for (const [, list = ''] of source.matchAll(/beginbfchar\n([\s\S]*?)endbfchar/g)) {
    for (const [, glyph = '', text = ''] of list.matchAll(/<(\w+)> <(\w+)>/g))
      map.set(glyph, unicode(text));
  }
  for (const [, list = ''] of source.matchAll(/beginbfrange\n([\s\S]*?)endbfrange/g)) {
    for (const [, first = '', last = '', text = ''] of list.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      const [from, to, code] = [first, last, text].map((hex) => Number.parseInt(hex, 16));
      if (from === undefined || to === undefined || code === undefined) continue;
      for (let i = 0; from + i <= to; i++) {
        map.set(
          (from + i).toString(16).toUpperCase().padStart(4, '0'),
          String.fromCodePoint(code + i),
        );
      }
    }
  }
  return map;
}

const unicode = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');

function drawnText(
  content: string,
  fonts: ReadonlyMap<string, ReadonlyMap<string, string>>,
): string {
  let font: ReadonlyMap<string, string> = new Map();
  let text = '';
  for (const [, name, glyphs] of content.matchAll(/\/(F\d+) [\d.]+ Tf|<([0-9A-F]+)> Tj/g)) {
    if (name !== undefined) font = fonts.get(name) ?? new Map();
    else for (const glyph of glyphs?.match(/.{4}/g) ?? []) text += font.get(glyph) ?? '\uFFFD';
  }
  return text.replace(/\s/g, '');
}
