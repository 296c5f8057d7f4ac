import type { BlockContent, DefinitionContent } from 'mdast';
import type { LeafDirective } from 'mdast-util-directive';
import { toString as plainText } from 'mdast-util-to-string';
import { calloutSchema, figureSchema } from '../../schemas/directives.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { tokensOf } from './directive-tokens.ts';
import { type BlockDirective, labelAndBody, partsOf, tellLabel } from './label.ts';
import type { Block, Callout } from './model.ts';
import { readPhrasing } from './phrasing.ts';
import type { Reading } from './reading.ts';

const readAttributes = attributeReader(figureSchema);
const readCalloutAttributes = attributeReader(calloutSchema);

/** `:::figure` with its call-outs; the rest of its body is the caption. */
export function readFigure(
  reading: Reading,
  node: BlockDirective,
  inside: Around,
): readonly Block[] {
  const given = readAttributes(reading, node);
  const src = given.written('src');
  if (partsOf(node).label !== undefined) tellLabel(reading, node, 'no words in square brackets');
  const content = labelAndBody(node);
  const callouts = content
    .filter(isCallout)
    .flatMap((directive) => readCallout(reading, directive) ?? []);
  const blocks = readBlocks(
    reading,
    content.filter((child) => !isCallout(child)),
    inside,
  );
  if (src === undefined) return blocks;
  const { alt } = given.values;
  return [
    {
      type: 'figure',
      id: given.ref('id'),
      src,
      alt,
      callouts,
      blocks,
      place: reading.placeOf(node),
    },
  ];
}

function readCallout(reading: Reading, node: LeafDirective): Callout | undefined {
  const given = readCalloutAttributes(reading, node);
  const item = given.ref('item');
  const phrasing = readPhrasing(reading, node.children, { names: 'the words of a call-out' });
  const words = plainText(phrasing).trim();
  if (item === undefined && words === '') {
    reading.facts.push({
      kind: 'attribute-wrong',
      place: reading.place(tokensOf(node).opening),
      directive: node.name,
      attribute: 'item',
      expected: 'an item of the catalogue, or words in square brackets where it has none',
    });
    return undefined;
  }
  const points = given.values.at;
  return points && { item, phrasing, words, points, place: reading.placeOf(node) };
}

function isCallout(child: BlockContent | DefinitionContent): child is LeafDirective {
  return child.type === 'leafDirective' && child.name === 'callout';
}
