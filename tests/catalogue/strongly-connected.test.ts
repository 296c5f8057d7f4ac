import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shortestCycle, stronglyConnected } from '../../src/catalogue/strongly-connected.ts';

const graphs = fc.integer({ min: 1, max: 7 }).chain((size) => {
  const node = fc.nat(size - 1);
  return fc.record({
    size: fc.constant(size),
    edges: fc.array(fc.tuple(node, node), { maxLength: 14 }),
  });
});

function graph({ size, edges }: { size: number; edges: [number, number][] }) {
  const nodes = Array.from({ length: size }, (_, i) => String(i));
  const next = (node: string) =>
    edges.filter(([from]) => String(from) === node).map(([, to]) => String(to));
  return { nodes, next };
}

/** Which nodes can be reached from which in one step or more: Warshall's closure. */
function closure(nodes: readonly string[], next: (node: string) => string[]) {
  const reach = new Set(nodes.flatMap((a) => next(a).map((b) => `${a} ${b}`)));
  for (const k of nodes)
    for (const i of nodes)
      for (const j of nodes)
        if (reach.has(`${i} ${k}`) && reach.has(`${k} ${j}`)) reach.add(`${i} ${j}`);
  return (a: string, b: string) => reach.has(`${a} ${b}`);
}

test('knots are the nodes that reach each other, by Warshall’s closure', () => {
  fc.assert(
    fc.property(graphs, (given) => {
      const { nodes, next } = graph(given);
      const reaches = closure(nodes, next);
      const expected = nodes
        .filter((node) => reaches(node, node))
        .map((node) => nodes.filter((other) => reaches(node, other) && reaches(other, node)));
      const distinct = [...new Map(expected.map((knot) => [knot.join(), knot])).values()];
      expect(stronglyConnected(nodes, next)).toEqual(distinct);
    }),
    { numRuns: 1000 },
  );
});

test('the cycle that is told goes round along the edges, without a node twice', () => {
  fc.assert(
    fc.property(graphs, (given) => {
      const { nodes, next } = graph(given);
      for (const knot of stronglyConnected(nodes, next)) {
        const cycle = shortestCycle(knot, next);
        expect(cycle[0]).toBe(knot[0]);
        expect(new Set(cycle).size).toBe(cycle.length);
        cycle.forEach((node, i) => {
          expect(next(node)).toContain(cycle[(i + 1) % cycle.length]);
        });
      }
    }),
  );
});

test('a chain of 100 000 entries, closed to a ring, is one knot', () => {
  const nodes = Array.from({ length: 1e5 }, (_, i) => String(i));
  const next = (node: string) => [nodes[(Number(node) + 1) % nodes.length] ?? ''];
  expect(stronglyConnected(nodes, next)).toHaveLength(1);
});
