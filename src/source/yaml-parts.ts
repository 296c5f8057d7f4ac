import { child, type YamlNode } from './yaml-node.ts';

/** An entry of a file that stands for itself, so that a fault in it leaves the others. */
export interface Part {
  readonly node: YamlNode;
  readonly path: string;
}

/** Such as `items.*.*`, cut at the dots; `*` is any key. */
export type PartPattern = readonly string[];

/** The part to which the value at a path belongs: of several, the smallest. */
export function partAt(
  root: YamlNode,
  patterns: readonly PartPattern[],
  path: readonly PropertyKey[],
): Part | undefined {
  let node: YamlNode | undefined = root;
  let part: Part | undefined;
  const steps: string[] = [];
  for (const step of path) {
    // An element of a list never stands for itself: without it the others would be numbered anew.
    if (node?.type !== 'map') break;
    node = child(node, step);
    steps.push(String(step));
    if (node && patterns.some((pattern) => fits(pattern, steps)))
      part = { node, path: steps.join('.') };
  }
  return part;
}

/** The parts that reach up to an offset or behind it; of one inside another, the smaller. */
export function partsReaching(
  root: YamlNode,
  patterns: readonly PartPattern[],
  offset: number,
): Part[] {
  const reaching = (node: YamlNode, path: readonly string[]): Part[] => {
    if (node.span.end < offset) return [];
    const mayHold = patterns.some(
      (pattern) => pattern.length > path.length && fits(pattern.slice(0, path.length), path),
    );
    if (mayHold && node.type === 'map' && node.entries.size > 0) {
      return [...node.entries].flatMap(([key, value]) => reaching(value, [...path, key]));
    }
    return patterns.some((pattern) => fits(pattern, path)) ? [{ node, path: path.join('.') }] : [];
  };
  return reaching(root, []);
}

function fits(pattern: PartPattern, path: readonly string[]): boolean {
  return (
    pattern.length === path.length && pattern.every((step, i) => step === '*' || step === path[i])
  );
}
