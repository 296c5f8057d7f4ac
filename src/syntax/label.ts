import type { BlockContent, DefinitionContent, Paragraph } from 'mdast';
import type { ContainerDirective, LeafDirective } from 'mdast-util-directive';
import { type Span, tokensOf } from './directive-tokens.ts';
import { type Reading, spanOf } from './reading.ts';

export type BlockDirective = ContainerDirective | LeafDirective;

/** The words in square brackets and the body of a block directive. */
export interface Parts {
  readonly label: { readonly words: Paragraph; readonly span: Span } | undefined;
  readonly body: readonly (BlockContent | DefinitionContent)[];
}

export function partsOf(node: BlockDirective): Parts {
  if (node.type === 'leafDirective') return { label: leafLabel(node), body: [] };
  const [first, ...body] = node.children;
  if (first?.type !== 'paragraph' || !first.data?.directiveLabel) {
    return { label: undefined, body: node.children };
  }
  const { start, end } = spanOf(first);
  return { label: { words: first, span: { start: start + 1, end: end - 1 } }, body };
}

function leafLabel({ children, position }: LeafDirective): Parts['label'] {
  const first = children[0];
  const last = children.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const span = { start: spanOf(first).start, end: spanOf(last).end };
  return { words: { type: 'paragraph', children, position }, span };
}

/** The label, as a paragraph of its own, and the body after it. */
export function labelAndBody(node: BlockDirective): (BlockContent | DefinitionContent)[] {
  const { label, body } = partsOf(node);
  return label === undefined ? [...body] : [label.words, ...body];
}

/** Tells square brackets that are missing, or that the directive has no use for. */
export function tellLabel(reading: Reading, node: BlockDirective, expected: string): void {
  const { opening } = tokensOf(node);
  const span = partsOf(node).label?.span;
  const found = span === undefined ? '' : reading.source(span).trim();
  reading.facts.push({
    kind: 'attribute-wrong',
    place: reading.place(span === undefined || found === '' ? opening : span),
    directive: node.name,
    attribute: '[…]',
    expected,
    ...(found === '' ? {} : { found }),
  });
}
