/** The nodes that a node leads to. */
export type Edges = (node: string) => Iterable<string>;

/**
 * The knots of a graph: sets of nodes each of which leads to every other, and single nodes that lead to themselves.
 * Nodes and knots come in the order of `nodes`. Linear in the size of the graph, and safe for chains of any length
 * (Kosaraju's algorithm without recursion).
 */
export function stronglyConnected(nodes: readonly string[], edges: Edges): readonly string[][] {
  const back = new Map<string, string[]>(nodes.map((node) => [node, []]));
  for (const node of nodes) for (const next of edges(node)) back.get(next)?.push(node);
  const finished = finishingOrder(nodes, edges);
  const rank = new Map(nodes.map((node, i) => [node, i]));
  const byRank = (a: string, b: string): number => (rank.get(a) ?? 0) - (rank.get(b) ?? 0);
  const seen = new Set<string>();
  const knots: string[][] = [];
  for (const root of finished.toReversed()) {
    const members = reachable(root, (node) => back.get(node) ?? [], seen);
    const isKnot = members.length > 1 || [...edges(root)].includes(root);
    if (isKnot && members.length > 0) knots.push(members.sort(byRank));
  }
  return knots.sort(([a = ''], [b = '']) => byRank(a, b));
}

/** A shortest way from the first node of a knot back to it, without the return. */
export function shortestCycle(knot: readonly string[], edges: Edges): readonly string[] {
  const [start = ''] = knot;
  const inside = new Set(knot);
  const from = new Map<string, string>();
  const queue = [start];
  for (const node of queue) {
    for (const next of edges(node)) {
      if (next === start) return wayTo(node, from);
      if (!inside.has(next) || from.has(next)) continue;
      from.set(next, node);
      queue.push(next);
    }
  }
  return [start];
}

function wayTo(end: string, from: ReadonlyMap<string, string>): readonly string[] {
  const way = [end];
  for (let node = from.get(end); node !== undefined; node = from.get(node)) way.push(node);
  return way.toReversed();
}

/** Each node after all that it leads to, save where they lead back. */
function finishingOrder(nodes: readonly string[], edges: Edges): readonly string[] {
  const seen = new Set<string>();
  const order: string[] = [];
  for (const root of nodes) {
    if (seen.has(root)) continue;
    seen.add(root);
    const path = [{ node: root, left: [...edges(root)] }];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const next = top.left.pop();
      if (next === undefined) {
        order.push(top.node);
        path.pop();
      } else if (!seen.has(next)) {
        seen.add(next);
        path.push({ node: next, left: [...edges(next)] });
      }
    }
  }
  return order;
}

/** All nodes that one leads to and that were not seen yet, itself first; they are seen then. */
function reachable(root: string, edges: Edges, seen: Set<string>): string[] {
  if (seen.has(root)) return [];
  seen.add(root);
  const found = [root];
  for (const node of found) {
    for (const next of edges(node)) {
      if (seen.has(next)) continue;
      seen.add(next);
      found.push(next);
    }
  }
  return found;
}
