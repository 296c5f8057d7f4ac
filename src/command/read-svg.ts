import {
  parseXml,
  XmlDocumentType,
  XmlElement,
  XmlError,
  XmlProcessingInstruction,
} from '@rgrove/parse-xml';
import { unitSize } from '../quantity/index.ts';
import type { PictureFile, PictureSize } from '../source/index.ts';

type Without<F> = F extends PictureFile ? Omit<F, 'path'> : never;

/** An SVG as a picture and nothing more: its size, or what in it is more than lines, surfaces and words. Never throws. */
export function readSvg(bytes: Uint8Array): Without<PictureFile> {
  try {
    const undefinedNames: string[] = [];
    const { root, children } = parseXml(textOf(bytes), {
      preserveDocumentType: true,
      resolveUndefinedEntity: (name) => {
        undefinedNames.push(name);
        return '';
      },
    });
    if (root === null || localName(root.name) !== 'svg') {
      return { state: 'broken', reason: 'its content is no svg' };
    }
    const [unsafe] = [...children.flatMap((child) => outside(child) ?? []), ...within(root)];
    if (unsafe !== undefined) return { state: 'unsafe', what: unsafe };
    const [name] = undefinedNames;
    return name === undefined
      ? { state: 'fit', size: sizeOf(root) }
      : { state: 'broken', reason: `SVG knows no ${name}` };
  } catch (error) {
    return { state: 'broken', reason: reasonOf(error) };
  }
}

function reasonOf(error: unknown): string {
  if (error instanceof XmlError) {
    const [said = 'it is no XML'] = error.message.split(/ \(line |\n/);
    return `${said.charAt(0).toLowerCase()}${said.slice(1)}, in line ${error.line}`;
  }
  return error instanceof RangeError ? 'it is nested too deep' : 'it is not text';
}

/** By its byte order mark, else as its first line says, else UTF-8. Throws where it is no such text. */
function textOf(bytes: Uint8Array): string {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 200));
  const marked = start.startsWith('\u00ff\u00fe')
    ? 'utf-16le'
    : start.startsWith('\u00fe\u00ff')
      ? 'utf-16be'
      : undefined;
  const said = /^(?:\u00ef\u00bb\u00bf)?<\?xml[^>]*\bencoding=["']([\w.:-]+)["']/.exec(start)?.[1];
  return new TextDecoder(marked ?? said ?? 'utf-8', { fatal: true }).decode(bytes);
}

/** What stands beside the root: a style sheet from elsewhere, names for text. */
function outside(node: object): string | undefined {
  if (node instanceof XmlProcessingInstruction && node.name === 'xml-stylesheet') {
    return 'a style sheet from elsewhere';
  }
  return node instanceof XmlDocumentType && /<!ENTITY/.test(node.internalSubset ?? '')
    ? 'entities of its own'
    : undefined;
}

function* within(root: XmlElement): Generator<string> {
  const open = [root];
  for (let element = open.pop(); element !== undefined; element = open.pop()) {
    yield* faultsOf(element);
    for (const child of element.children.toReversed())
      if (child instanceof XmlElement) open.push(child);
  }
}

function* faultsOf(element: XmlElement): Generator<string> {
  const name = localName(element.name);
  if (name === 'script') yield 'a script';
  if (name === 'foreignobject') yield 'a piece of a web page (`foreignObject`)';
  if (name === 'style' && reachesOut(element.text))
    yield 'a style that loads something from elsewhere';
  for (const [key, value] of Object.entries(element.attributes)) {
    const attribute = localName(key);
    const address = value.trim();
    if (/^on[a-z]+$/.test(attribute)) yield `a script (\`${key}\`)`;
    else if (attribute === 'attributename' && /^(on|(xlink:)?href$)/i.test(address)) {
      yield `an animation of \`${address}\``;
    } else if (attribute === 'href' || attribute === 'src') {
      if (/^(java|vb)script:/i.test(address)) yield 'a script in a link';
      else if (name !== 'a' && !isInside(address))
        yield `a part that lies elsewhere (\`${short(address)}\`)`;
    } else if (reachesOut(value)) yield `a part that lies elsewhere (\`${short(address)}\`)`;
  }
}

/** Of the same file: by its id, or written out in the address. */
const isInside = (address: string): boolean => address === '' || /^(#|data:)/i.test(address);

function reachesOut(style: string): boolean {
  return (
    /@import/i.test(style) ||
    [...style.matchAll(/\burl\(\s*["']?([^"')]*)/gi)].some(
      ([, address = '']) => !isInside(address.trim()),
    )
  );
}

const short = (address: string): string =>
  address.length > 60 ? `${address.slice(0, 59)}…` : address;

/** Without the prefix of a namespace, in small letters. */
const localName = (name: string): string => name.slice(name.indexOf(':') + 1).toLowerCase();

/** The area that it draws on, else its width and height where they are no percentages. */
function sizeOf({ attributes }: XmlElement): PictureSize | undefined {
  const [, , width = 0, height = 0] = (attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (width > 0 && height > 0) return { width, height };
  const [said, high] = [lengthOf(attributes.width), lengthOf(attributes.height)];
  return said !== undefined && high !== undefined ? { width: said, height: high } : undefined;
}

/** In pixels of CSS: an inch has 96. */
function lengthOf(written: string | undefined): number | undefined {
  const [, number, unit = ''] =
    /^\s*\+?(\d*\.?\d+)\s*(px|pt|pc|mm|cm|in)?\s*$/.exec(written ?? '') ?? [];
  const length = Number(number) * (pixelsIn[unit] ?? 1);
  return length > 0 ? length : undefined;
}

const pixelsIn: Readonly<Record<string, number>> = {
  pt: 96 / 72,
  pc: 16,
  mm: 96 / unitSize('in'),
  cm: (96 * unitSize('cm')) / unitSize('in'),
  in: 96,
};
