/** A node of a CPU profile, as the inspector of V8 gives it. */
export interface ProfileNode {
  readonly id: number;
  readonly callFrame: {
    readonly functionName: string;
    readonly url: string;
    readonly lineNumber: number;
  };
}

/** Libraries whose time is their own; that of the others counts where they are called. */
const libraries: readonly (readonly [RegExp, string])[] = [
  [
    /node_modules\/(micromark|mdast-|remark-|unist-|unified|decode-named|character-)/,
    'parse library',
  ],
  [/node_modules\/yaml\//, 'YAML library'],
];

const engine: Readonly<Record<string, string>> = {
  '(garbage collector)': 'garbage collector',
  '(program)': 'Node itself',
  '(idle)': 'idle',
};

/** Who a sample counts for: a room of src, a library, or the engine. */
export function ownerOf(
  node: ProfileNode,
  parentOf: (node: ProfileNode) => ProfileNode | undefined,
): string {
  const { functionName, url } = node.callFrame;
  const itself = url === '' ? engine[functionName] : undefined;
  if (itself !== undefined) return itself;
  const library = libraries.find(([pattern]) => pattern.test(url))?.[1];
  if (library !== undefined) return library;
  const room = /\/src\/([^/]+)\//.exec(url)?.[1];
  if (room !== undefined && !url.includes('node_modules')) return room;
  if (/\/schemas\//.test(url) && !url.includes('node_modules')) return 'schemas';
  const parent = parentOf(node);
  return parent === undefined ? 'outside the check' : ownerOf(parent, parentOf);
}

/** A function with its file below the project, or the library that it belongs to. */
export function placeIn({ callFrame: { functionName, url, lineNumber } }: ProfileNode): string {
  const name = functionName === '' ? '(nameless)' : functionName;
  if (url === '') return name;
  const short = /(?:node_modules|\/src|\/schemas)\/(.*)$/.exec(url);
  return `${name}  ${short === null ? url : short[0].replace(/^\//, '')}:${lineNumber + 1}`;
}
