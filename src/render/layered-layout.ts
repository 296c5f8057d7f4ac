import dagre from '@dagrejs/dagre';

/** Something to place, as large as it is drawn. */
export interface Shape {
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Shapes by their middles, and the lines between them, in pixels from the top left corner. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly middles: ReadonlyMap<string, Spot>;
  /** In the order in which the lines were given; each begins and ends at the edge of a shape. */
  readonly lines: readonly (readonly Spot[])[];
}

const betweenLayers = 26;
const betweenShapes = 10;
const edge = 2;

/** Places shapes in layers from left to right, so that lines run to the right as far as they go in no circle. */
export function layeredLayout(
  shapes: readonly Shape[],
  lines: readonly (readonly [from: string, to: string])[],
): Layout {
  const graph = new dagre.graphlib.Graph();
  graph.setGraph({
    rankdir: 'LR',
    ranksep: betweenLayers,
    nodesep: betweenShapes,
    edgesep: betweenShapes,
    marginx: edge,
    marginy: edge,
  });
  for (const { id, width, height } of shapes) graph.setNode(id, { width, height });
  for (const [from, to] of lines) graph.setEdge(from, to, {});
  dagre.layout(graph);
  const { width = 0, height = 0 } = graph.graph();
  const middles = new Map<string, Spot>();
  for (const { id } of shapes) {
    const { x = 0, y = 0 } = graph.node(id);
    middles.set(id, { x, y });
  }
  return {
    width: Math.ceil(width),
    height: Math.ceil(height),
    middles,
    lines: lines.map(([from, to]) => graph.edge(from, to).points ?? []),
  };
}
