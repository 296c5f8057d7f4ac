/** Where in YAML a writer is typing. Offsets are those of the text. */
export interface YamlAt {
  /** The keys above, outermost first; elements of lists have none. */
  readonly path: readonly string[];
  /** Keys that stand beside this one. */
  readonly beside: ReadonlySet<string>;
  readonly from: number;
  readonly to: number;
  /** The key whose value is typed; undefined where a key is. */
  readonly key: string | undefined;
  /** True where what is typed is one of a list, or may be. */
  readonly isElement: boolean;
  /** The word at the place, as far as it is typed. */
  readonly typed: string;
}

const keyLine =
  /^(\s*(?:-\s+)*)(?:"([^"]+)"|'([^']+)'|([^\s#:,{}[\]"'&*!|>%@`-][^:#]*?))\s*:(?=\s|$)/;

/** Looks at the lines alone, so that it works where they cannot be read as YAML. `start` is that of the YAML. */
export function yamlAt(text: string, start: number, offset: number): YamlAt | undefined {
  const lineStart = Math.max(start, text.lastIndexOf('\n', offset - 1) + 1);
  const line = text.slice(lineStart).split(/\r?\n/, 1)[0] ?? '';
  const typedLine = text.slice(lineStart, offset);
  if (/(^|\s)#/.test(typedLine)) return undefined;
  const above = text.slice(start, lineStart).split(/\r?\n/).slice(0, -1);
  const open = openBrackets(typedLine);
  const head = keyLine.exec(typedLine);
  const headKey = head?.[2] ?? head?.[3] ?? head?.[4];
  const headIndent = (head?.[1] ?? /^\s*(?:-\s*)*/.exec(typedLine)?.[0] ?? '').length;
  const { path, beside: before } = parents(above, headIndent);
  const below = text.slice(lineStart).split(/\r?\n/).slice(1);
  const beside = new Set([...before, ...siblings(below, headIndent)]);
  if (open.length > 0) return inFlow(typedLine, open, [...path], headKey, offset, line);
  const tail = typedLine.slice(headKey === undefined ? headIndent : (head?.[0].length ?? 0));
  const typed = tail.trimStart();
  const rest = /^[^\s,#\]}:]*/.exec(line.slice(typedLine.length))?.[0] ?? '';
  return {
    path,
    beside,
    from: offset - typed.length,
    to: offset + rest.length,
    key: headKey ?? (/^\s*-\s/.test(typedLine) ? path.at(-1) : undefined),
    isElement: headKey === undefined && /^\s*-\s/.test(typedLine),
    typed,
  };
}

interface Bracket {
  readonly sign: string;
  readonly at: number;
}

function openBrackets(before: string): readonly Bracket[] {
  const open: Bracket[] = [];
  let quote = '';
  for (const [at, sign] of [...before].entries()) {
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if ((sign === '"' || sign === "'") && /[\s:,[{]/.test(before[at - 1] ?? ' '))
      quote = sign;
    else if (sign === '{' || sign === '[') open.push({ sign, at });
    else if (sign === '}' || sign === ']') open.pop();
  }
  return open;
}

function inFlow(
  before: string,
  open: readonly Bracket[],
  path: string[],
  headKey: string | undefined,
  offset: number,
  line: string,
): YamlAt {
  for (const [i, { at }] of open.entries()) {
    const key =
      /([\w-]+)\s*:\s*$/.exec(before.slice(0, at))?.[1] ?? (i === 0 ? headKey : undefined);
    if (key !== undefined) path.push(key);
  }
  const last = open.at(-1);
  const inside = before.slice((last?.at ?? 0) + 1);
  const member = inside.slice(inside.lastIndexOf(',') + 1);
  const valued = /^\s*([\w-]+)\s*:\s*(.*)$/.exec(member);
  const isList = last?.sign === '[';
  const typed = (isList ? member : (valued?.[2] ?? member)).trimStart();
  const rest = /^[^\s,#\]}:]*/.exec(line.slice(before.length))?.[0] ?? '';
  const beside = new Set([...line.matchAll(/([\w-]+)\s*:/g)].map(([, key = '']) => key));
  return {
    path: isList ? path.slice(0, -1) : path,
    beside,
    from: offset - typed.length,
    to: offset + rest.length,
    key: isList ? path.at(-1) : valued?.[1],
    isElement: isList,
    typed,
  };
}

/** Keys of the same indentation below, up to one of less. */
function siblings(below: readonly string[], indent: number): readonly string[] {
  const found: string[] = [];
  for (const line of below) {
    const match = keyLine.exec(line);
    const width = (match?.[1] ?? /^\s*/.exec(line)?.[0] ?? '').length;
    if (width < indent && line.trim() !== '') break;
    if (match !== null && width === indent) found.push(match[2] ?? match[3] ?? match[4] ?? '');
  }
  return found;
}

/** The keys of less indentation above, and those of the same before one of less comes. */
function parents(
  above: readonly string[],
  indent: number,
): { readonly path: readonly string[]; readonly beside: ReadonlySet<string> } {
  const path: string[] = [];
  const beside = new Set<string>();
  let limit = indent;
  for (const line of above.toReversed()) {
    const found = keyLine.exec(line);
    if (found === null) continue;
    const width = (found[1] ?? '').length;
    const key = found[2] ?? found[3] ?? found[4] ?? '';
    if (width < limit) {
      path.unshift(key);
      limit = width;
    } else if (width === limit && path.length === 0) beside.add(key);
    if (limit === 0 && path.length > 0) break;
  }
  return { path, beside };
}
