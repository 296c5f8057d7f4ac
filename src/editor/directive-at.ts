/** Where in a directive a writer is typing. Offsets are those of the text. */
export interface DirectiveAt {
  /** One for a sentence, two for a line, three or more for a block. */
  readonly colons: number;
  readonly name: string;
  readonly start: number;
  /** Attributes that stand whole in the braces, by name; `#x` as `id`. */
  readonly given: ReadonlyMap<string, string>;
  readonly at:
    | { readonly part: 'name'; readonly from: number; readonly to: number }
    | { readonly part: 'label'; readonly from: number; readonly to: number; readonly text: string }
    | { readonly part: 'key'; readonly from: number; readonly to: number }
    | {
        readonly part: 'value';
        readonly key: string;
        readonly text: string;
        /** Of the value, without its quotes. */
        readonly from: number;
        readonly to: number;
        readonly isQuoted: boolean;
      };
}

/** Nobody writes a longer directive, and the search goes back no further. */
const longest = 2000;

/**
 * The directive around an offset, as far as it is typed: its braces need not be closed yet. Looks at the text
 * alone, so that it works where nothing can be read.
 */
export function directiveAt(text: string, offset: number): DirectiveAt | undefined {
  const from = Math.max(0, offset - longest, paragraphStart(text, offset));
  const before = text.slice(from, offset);
  const starts = [...before.matchAll(/(?<![:\w])(:+)([a-z][\w-]*)?/g)].toReversed();
  for (const match of starts) {
    const [whole, colons = '', name = ''] = match;
    const start = from + match.index;
    const nameFrom = start + colons.length;
    if (start + whole.length >= offset) {
      const rest = /^[\w-]*/.exec(text.slice(offset))?.[0] ?? '';
      const at = { part: 'name', from: nameFrom, to: offset + rest.length } as const;
      return { colons: colons.length, name: name + rest, start, given: new Map(), at };
    }
    if (name === '') continue;
    const found = within(text, nameFrom + name.length, offset);
    if (found !== undefined) return { colons: colons.length, name, start, ...found };
  }
  return undefined;
}

function within(
  text: string,
  afterName: number,
  offset: number,
): Pick<DirectiveAt, 'given' | 'at'> | undefined {
  let at = afterName;
  if (text[at] === '[') {
    const close = closingBracket(text, at, offset);
    if (close === undefined) {
      const lineEnd = indexOrEnd(text, '\n', offset);
      const inner = text.slice(at + 1, lineEnd);
      const to = at + 1 + (/^[^\]\r\n]*/.exec(inner)?.[0].length ?? 0);
      const label = { part: 'label', from: at + 1, to: Math.max(offset, to) } as const;
      return { given: new Map(), at: { ...label, text: text.slice(label.from, label.to) } };
    }
    at = close + 1;
  }
  if (text[at] !== '{' || at >= offset) return undefined;
  return inBraces(text, at + 1, offset);
}

const attribute =
  /\s*(?:([#.])([\w-]*)|([a-zA-Z][\w-]*)(?:(=)(?:"([^"\r\n]*)("?)|'([^'\r\n]*)('?)|([^\s"'{}]*)))?)/y;

function inBraces(
  text: string,
  from: number,
  offset: number,
): Pick<DirectiveAt, 'given' | 'at'> | undefined {
  const given = new Map<string, string>();
  let found: DirectiveAt['at'] | undefined;
  let at = from;
  while (at < text.length && text[at] !== '}') {
    attribute.lastIndex = at;
    const match = attribute.exec(text);
    // Attributes end with the paragraph where their brace is not closed.
    if (match === null || /\n\s*\n/.test(match[0])) break;
    const end = attribute.lastIndex;
    const { key, value, valueFrom, isQuoted } = read(match, end);
    const keyFrom = end - match[0].trimStart().length;
    if (keyFrom <= offset && offset <= end) {
      found =
        value === undefined || offset < valueFrom
          ? { part: 'key', from: keyFrom, to: keyFrom + key.length }
          : {
              part: 'value',
              key,
              text: value,
              from: valueFrom,
              to: valueFrom + value.length,
              isQuoted,
            };
    } else given.set(key, value ?? '');
    at = end;
  }
  if (at < offset && text.slice(at, offset).trim() !== '') return undefined;
  return { given, at: found ?? { part: 'key', from: offset, to: offset } };
}

function read(match: RegExpExecArray, end: number) {
  const [, , shortcut, key = '', , double, doubleEnd, single, singleEnd, bare] = match;
  if (shortcut !== undefined)
    return { key: 'id', value: shortcut, valueFrom: end - shortcut.length, isQuoted: false };
  const quoted = double ?? single;
  if (quoted === undefined)
    return { key, value: bare, valueFrom: end - (bare?.length ?? 0), isQuoted: false };
  const closing = (doubleEnd ?? singleEnd ?? '').length;
  return { key, value: quoted, valueFrom: end - closing - quoted.length, isQuoted: true };
}

function closingBracket(text: string, open: number, offset: number): number | undefined {
  let depth = 0;
  for (let i = open; i < offset; i += 1) {
    if (text[i] === '\\') i += 1;
    else if (text[i] === '[') depth += 1;
    else if (text[i] === ']') depth -= 1;
    if (depth === 0) return i;
  }
  return undefined;
}

function paragraphStart(text: string, offset: number): number {
  const blank = [...text.slice(Math.max(0, offset - longest), offset).matchAll(/\n[ \t]*\r?\n/g)];
  const last = blank.at(-1);
  return last === undefined ? 0 : Math.max(0, offset - longest) + last.index + last[0].length;
}

function indexOrEnd(text: string, sign: string, from: number): number {
  const found = text.indexOf(sign, from);
  return found < 0 ? text.length : found;
}
