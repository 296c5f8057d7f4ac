import { isMap, isScalar, type Pair, parseDocument, type YAMLMap } from 'yaml';
import type { Edit } from '../../schemas/finding.ts';

export interface Line {
  /** `fasteners`, `parts`. */
  readonly section: string;
  /** `cover-bolt: { name: cover bolt }` */
  readonly entry: string;
}

/**
 * The edits that write entries into a procedure's front matter, below `items:`, or into a machine's file. Undefined
 * where the YAML is broken, or what is there is written in braces.
 */
export function insertEntries(
  file: string,
  text: string,
  lines: readonly Line[],
): readonly Edit[] | undefined {
  const isProcedure = file.endsWith('.md');
  const front = isProcedure ? frontMatter.exec(text) : undefined;
  if (isProcedure && front === null) return undefined;
  const [whole, open = '', inner = ''] = front ?? [text, '', text];
  const start = (front?.index ?? 0) + open.length;
  const newLine = whole.includes('\r\n') ? '\r\n' : '\n';
  const document = parseDocument(inner);
  if (document.errors.length > 0 || !isMap(document.contents)) return undefined;
  const insertion = isProcedure
    ? belowItems(document.contents, inner, lines)
    : intoSections(document.contents, inner, lines, 0);
  return insertion?.map(({ at, words }) => ({
    file,
    start: start + at,
    end: start + at,
    text: words.map((line) => `${newLine}${line}`).join(''),
  }));
}

const frontMatter = /^(\uFEFF?---[ \t]*\r?\n)([\s\S]*?)(?=\r?\n---[ \t]*(?:\r?\n|$))/;

interface Insertion {
  /** Offset of the end of a line. */
  readonly at: number;
  readonly words: readonly string[];
}

function belowItems(root: YAMLMap, text: string, lines: readonly Line[]): Insertion[] | undefined {
  const items = pairOf(root, 'items');
  if (items === undefined) {
    const sections = newSections(lines, '  ');
    return root.flow ? undefined : [{ at: text.trimEnd().length, words: ['items:', ...sections] }];
  }
  if (!isMap(items.value) || items.value.flow) return undefined;
  return intoSections(items.value, text, lines, columnOf(items.value, text));
}

/** Behind the last entry of a section that is there; a new section behind the last one. */
function intoSections(
  map: YAMLMap,
  text: string,
  lines: readonly Line[],
  column: number,
): Insertion[] | undefined {
  if (map.flow) return undefined;
  const insertions: Insertion[] = [];
  const lacking: Line[] = [];
  for (const section of new Set(lines.map((line) => line.section))) {
    const own = lines.filter((line) => line.section === section);
    const pair = pairOf(map, section);
    if (pair === undefined) lacking.push(...own);
    else if (!isMap(pair.value) || pair.value.flow) return undefined;
    else {
      const indent = ' '.repeat(columnOf(pair.value, text));
      insertions.push({
        at: endOf(pair.value, text),
        words: own.map(({ entry }) => indent + entry),
      });
    }
  }
  if (lacking.length > 0)
    insertions.push({ at: endOf(map, text), words: newSections(lacking, ' '.repeat(column)) });
  return insertions;
}

function newSections(lines: readonly Line[], indent: string): string[] {
  return [...new Set(lines.map(({ section }) => section))].flatMap((section) => [
    `${indent}${section}:`,
    ...lines.filter((line) => line.section === section).map(({ entry }) => `${indent}  ${entry}`),
  ]);
}

function pairOf(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((pair) => isScalar(pair.key) && pair.key.value === key);
}

/** How far the keys of a map are indented. */
function columnOf(map: YAMLMap, text: string): number {
  const at = map.range?.[0] ?? 0;
  return at - (text.lastIndexOf('\n', at - 1) + 1);
}

/** End of the line on which a map ends. */
function endOf(map: YAMLMap, text: string): number {
  const upTo = text.slice(0, map.range?.[1] ?? text.length).trimEnd().length;
  const end = text.slice(upTo).search(/\r?\n/);
  return end < 0 ? text.length : upTo + end;
}
