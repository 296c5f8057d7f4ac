/** Offsets in the whole file, `end` exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** YAML as the reader of a manual needs it: plain data, each piece with the place where it is written. */
export type YamlNode = YamlMap | YamlList | YamlScalar;

interface Located {
  readonly span: Span;
  /** The key under which it stands, unless it is the root or an element of a list. */
  readonly key: Span | undefined;
}

export interface YamlMap extends Located {
  readonly type: 'map';
  readonly isFlow: boolean;
  readonly entries: ReadonlyMap<string, YamlNode>;
}

export interface YamlList extends Located {
  readonly type: 'list';
  readonly isFlow: boolean;
  readonly items: readonly YamlNode[];
}

export interface YamlScalar extends Located {
  readonly type: 'scalar';
  /** The text without quotes, before it is taken for a number or anything else. */
  readonly source: string;
  readonly value: string | number | boolean | null;
}

export function child(node: YamlNode, step: PropertyKey): YamlNode | undefined {
  if (node.type === 'map') return node.entries.get(String(step));
  if (node.type === 'list') return node.items[Number(step)];
  return undefined;
}

/** The node at exactly this path. */
export function exactNode(root: YamlNode, path: readonly PropertyKey[]): YamlNode | undefined {
  let node: YamlNode | undefined = root;
  for (const step of path) node = node && child(node, step);
  return node;
}

/** The node at a path, or else the nearest one above it. */
export function nodeAt(root: YamlNode, path: readonly PropertyKey[]): YamlNode {
  let node = root;
  for (const step of path) {
    const next = child(node, step);
    if (!next) break;
    node = next;
  }
  return node;
}

/** What to mark for a node: its value where that is short, the key where the value is a block. */
export function spanOf(node: YamlNode): Span {
  if (node.type === 'scalar') {
    return node.span.start === node.span.end ? (node.key ?? node.span) : node.span;
  }
  if (node.type === 'list') return node.isFlow ? node.span : (node.key ?? node.span);
  if (node.key) return node.key;
  if (node.isFlow) return node.span;
  const first = node.entries.values().next().value;
  return first?.key ?? node.span;
}

/** What to mark for the key of a node; for one without a key, what stands for its value. */
export function keySpanOf(node: YamlNode): Span {
  return node.key ?? spanOf(node);
}

export interface DataOptions {
  /** Numbers that are read as numbers although they are not written the way numbers are printed (`8.0`). */
  readonly asNumber: ReadonlySet<YamlNode>;
  /** Entries of maps that are left out. */
  readonly without: { has(node: YamlNode): boolean };
}

/**
 * Plain data of a tree. A number keeps its text when printing it would lose something (`4.0`, `007`), so
 * that classes and part numbers print as written; `asNumber` overrides.
 */
export function dataOf(node: YamlNode, options: DataOptions): unknown {
  if (node.type === 'list') return node.items.map((item) => dataOf(item, options));
  if (node.type === 'map') {
    const data: Record<string, unknown> = Object.create(null);
    for (const [key, value] of node.entries) {
      if (!options.without.has(value)) data[key] = dataOf(value, options);
    }
    return data;
  }
  return isOddNumber(node) && !options.asNumber.has(node) ? node.source : node.value;
}

/** The numbers in and below a node that `dataOf` gives as text. */
export function oddNumbers(node: YamlNode): YamlNode[] {
  if (node.type === 'list') return node.items.flatMap(oddNumbers);
  if (node.type === 'map') return [...node.entries.values()].flatMap(oddNumbers);
  return isOddNumber(node) ? [node] : [];
}

function isOddNumber(node: YamlScalar): boolean {
  return typeof node.value === 'number' && String(node.value) !== node.source;
}
