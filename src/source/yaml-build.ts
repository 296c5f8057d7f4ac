import { isAlias, isScalar, isSeq, type ParsedNode } from 'yaml';
import type { Locator } from './place.ts';
import type { Span, YamlNode, YamlScalar } from './yaml-node.ts';
import type { YamlFault } from './yaml-reason.ts';

/** Values that aliases may repeat in one file; more is a file made to choke its reader. */
const mostRepeated = 10_000;

interface Building {
  readonly locator: Locator;
  readonly start: number;
  readonly faults: YamlFault[];
  readonly anchors: Map<string, ParsedNode>;
  /** The collections around the node in hand: an alias of one of them would have no end. */
  readonly open: Set<ParsedNode>;
  isRepeat: boolean;
  repeated: number;
}

/** Turns the library's nodes into ours: aliases followed, keys as text, doubled keys and bad aliases told. */
export function buildNode(
  contents: ParsedNode | null,
  locator: Locator,
  start: number,
): { root: YamlNode; faults: readonly YamlFault[] } {
  const building: Building = {
    locator,
    start,
    faults: [],
    anchors: new Map(),
    open: new Set(),
    isRepeat: false,
    repeated: 0,
  };
  const root = contents
    ? build(contents, undefined, building)
    : nothing({ start, end: start }, undefined);
  return { root, faults: building.faults };
}

function build(node: ParsedNode, key: Span | undefined, building: Building): YamlNode {
  const span = spanIn(node, building);
  if (isAlias(node)) return follow(node.source, span, key, building);
  if (building.isRepeat) building.repeated++;
  else if (node.anchor) building.anchors.set(node.anchor, node);
  if (isScalar(node)) return scalar(node.value, node.source, span, key);
  building.open.add(node);
  const made: YamlNode = isSeq(node)
    ? {
        type: 'list',
        span,
        key,
        isFlow: node.flow === true,
        items: node.items.map((item) => build(item, undefined, building)),
      }
    : { type: 'map', span, key, isFlow: node.flow === true, entries: entries(node, building) };
  building.open.delete(node);
  return made;
}

function entries(
  node: Extract<ParsedNode, { items: { key: unknown }[] }>,
  building: Building,
): Map<string, YamlNode> {
  const found = new Map<string, YamlNode>();
  for (const pair of node.items) {
    const keySpan = spanIn(pair.key, building);
    const name = isScalar(pair.key) ? (pair.key.source ?? String(pair.key.value ?? '')) : undefined;
    if (name === undefined || name === '__proto__') {
      const reason = 'a key must be one plain word, such as torque or anvil-bolt';
      building.faults.push({ ...keySpan, reason, isFatal: false });
      continue;
    }
    const value = pair.value
      ? build(pair.value, keySpan, building)
      : nothing({ start: keySpan.end, end: keySpan.end }, keySpan);
    const first = found.get(name)?.key;
    if (first) {
      const reason = `the key ${name} stands twice here; the first is on line ${building.locator.point(first.start).line}`;
      building.faults.push({ ...keySpan, reason, isFatal: false });
    } else found.set(name, value);
  }
  return found;
}

function follow(name: string, span: Span, key: Span | undefined, building: Building): YamlNode {
  const target = building.anchors.get(name);
  const fail = (reason: string): YamlNode => {
    building.faults.push({ ...span, reason, isFatal: true });
    return nothing(span, key);
  };
  if (!target) return fail(`*${name} repeats a value that no &${name} before it marks`);
  if (building.open.has(target)) return fail(`*${name} stands inside the value that it repeats`);
  if (building.repeated > mostRepeated) return nothing(span, key);
  const outer = building.isRepeat;
  building.isRepeat = true;
  const made = build(target, key, building);
  building.isRepeat = outer;
  if (!outer && building.repeated > mostRepeated) {
    return fail(`*${name} repeats too much: more than ${mostRepeated} values come from repeats`);
  }
  return { ...made, span };
}

function scalar(
  value: unknown,
  source: string | undefined,
  span: Span,
  key: Span | undefined,
): YamlScalar {
  const plain =
    typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
      ? value
      : null;
  return { type: 'scalar', span, key, source: source ?? String(plain ?? ''), value: plain };
}

function nothing(span: Span, key: Span | undefined): YamlScalar {
  return { type: 'scalar', span, key, source: '', value: null };
}

/** Where a node is written, without the white space that the library counts to a block. */
function spanIn(node: ParsedNode, { locator: { text }, start }: Building): Span {
  const from = start + node.range[0];
  let to = start + node.range[1];
  while (to > from && /\s/.test(text[to - 1] ?? '')) to--;
  return { start: from, end: to };
}
