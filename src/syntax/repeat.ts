import { labelledSchema } from '../../schemas/directives.ts';
import { wordsOf } from './action.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { tokensOf } from './directive-tokens.ts';
import { type BlockDirective, partsOf, tellLabel } from './label.ts';
import type { Repeat } from './model.ts';
import { readPhrasing } from './phrasing.ts';
import type { Reading } from './reading.ts';

const readAttributes = attributeReader(labelledSchema);

/** `:::repeat[until …]` around blocks. */
export function readRepeat(reading: Reading, node: BlockDirective, around: Around): Repeat {
  readAttributes(reading, node);
  const { label, body } = partsOf(node);
  const place = reading.placeOf(node);
  const text = label === undefined ? '' : wordsOf(label.words);
  if (text === '') tellLabel(reading, node, 'when it ends, such as [until no more bubbles come]');
  const inside: Around = { ...around, outer: { name: 'repeat', tokens: tokensOf(node) } };
  const blocks = readBlocks(reading, body, inside);
  const phrasing = readPhrasing(reading, label?.words.children ?? [], { names: 'a label' });
  const until = { text, place: label === undefined ? place : reading.place(label.span) };
  return { type: 'repeat', until, phrasing, blocks, place };
}
