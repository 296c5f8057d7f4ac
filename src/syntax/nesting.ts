export interface Deep {
  readonly depth: number;
  /** Offsets of the line, `end` exclusive. */
  readonly start: number;
  readonly end: number;
}

/**
 * The line at which lists, quotations and blocks are nested deepest, seen from outside: never less deep
 * than the parser would find it, up to a constant factor, and exact for tidy text.
 */
export function deepestLine(lines: readonly string[]): Deep {
  let deepest: Deep = { depth: 0, start: 0, end: 0 };
  let open: OpenBlock[] = [];
  let offset = 0;
  for (const line of lines) {
    const prefix = prefixOf(line);
    const rest = line.slice(prefix.end).trimEnd();
    if (rest !== '') open = open.filter((block) => block.column <= prefix.indent);
    const fence = /^(:{3,})[ \t]*(\S?)/.exec(rest);
    if (fence !== null) {
      const colons = fence[1]?.length ?? 0;
      if (fence[2]) open.push({ colons, column: prefix.columns });
      else open = closedBy(open, colons);
    }
    const depth = open.length + prefix.containers;
    if (depth > deepest.depth) deepest = { depth, start: offset, end: offset + line.length };
    offset += line.length + 1;
  }
  return deepest;
}

interface OpenBlock {
  readonly colons: number;
  readonly column: number;
}

/** A closing fence ends the outermost block that has no more colons than it, and all inside it. */
function closedBy(open: OpenBlock[], colons: number): OpenBlock[] {
  const outermost = open.findIndex((block) => block.colons <= colons);
  return outermost < 0 ? open : open.slice(0, outermost);
}

interface Prefix {
  /** Where the words begin: an offset in the line, and a column. */
  readonly end: number;
  readonly columns: number;
  /** The column of the first list marker, or of the words: what is further in stays open. */
  readonly indent: number;
  /** How many lists and quotations the line can be inside of; none when it opens none. */
  readonly containers: number;
}

/** The white space and the markers of lists and quotations with which a line begins. */
function prefixOf(line: string): Prefix {
  const token = /[ \t]+|>|(?:[-+*]|\d{1,9}[.)])(?=[ \t]|$)/y;
  let markers = 0;
  let spaces = 0;
  let columns = 0;
  let indent: number | undefined;
  let end = 0;
  for (let match = token.exec(line); match !== null; match = token.exec(line)) {
    const [found] = match;
    end = token.lastIndex;
    if (/^[ \t]/.test(found)) {
      const width = widthOf(found);
      columns += width;
      spaces += width;
    } else {
      if (found !== '>') indent ??= columns;
      markers += 1;
      columns += found.length;
    }
  }
  // One space goes with a marker; each list that the line continues takes two columns at least.
  const continued = Math.max(0, spaces - markers) >> 1;
  return { end, columns, indent: indent ?? columns, containers: markers && markers + continued };
}

function widthOf(blank: string): number {
  let width = 0;
  for (const space of blank) width += space === '\t' ? 4 : 1;
  return width;
}

/** Far below what `tooDeepTree` allows, whatever the parser makes of a line. */
const shallow = { containers: 16, marks: 240 } as const;

/**
 * Whether the tree of a text cannot be too deep, seen from outside: emphasis, links and footnotes need a mark for
 * each level, and all of it between two empty lines.
 */
export function isSurelyShallow(text: string): boolean {
  const lines = text.split(/\r\n|\r|\n/);
  let marks = 0;
  for (const line of lines) {
    if (/^[ \t]*$/.test(line)) marks = 0;
    else for (const _ of line.matchAll(/[[*_~]/g)) marks += 1;
    if (marks > shallow.marks) return false;
  }
  return deepestLine(lines).depth <= shallow.containers;
}
