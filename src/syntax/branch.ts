import type { ContainerDirective } from 'mdast-util-directive';
import { labelledSchema } from '../../schemas/directives.ts';
import { wordsOf } from './action.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { tellUnclosed } from './closing.ts';
import { tokensOf } from './directive-tokens.ts';
import { type BlockDirective, partsOf, tellLabel } from './label.ts';
import { tellMisplaced } from './misplaced.ts';
import type { Branch, Way } from './model.ts';
import { readPhrasing } from './phrasing.ts';
import { type Reading, spanOf } from './reading.ts';

const readAttributes = attributeReader(labelledSchema);

/** `:::either` with the `:::or` blocks that follow it. */
export function readBranch(
  reading: Reading,
  nodes: readonly [ContainerDirective, ...ContainerDirective[]],
  around: Around,
): Branch {
  const [first] = nodes;
  if (nodes.length === 1) {
    tellMisplaced(
      reading,
      first,
      'no :::or after it',
      ':::either […] and directly after it one :::or […] or more; where there is one way only, :::if […]',
    );
  }
  const ways = nodes.map((node) => {
    tellUnclosed(reading, node, around);
    return readWay(reading, node, around);
  });
  const { end } = spanOf(nodes.at(-1) ?? first);
  const place = reading.place({ start: spanOf(first).start, end });
  return { type: 'branch', ways, optional: nodes.length === 1, place };
}

/** `:::if`, or one half of a broken pair: a way that may be taken or not. */
export function readOptional(reading: Reading, node: BlockDirective, around: Around): Branch {
  return {
    type: 'branch',
    ways: [readWay(reading, node, around)],
    optional: true,
    place: reading.placeOf(node),
  };
}

function readWay(reading: Reading, node: BlockDirective, around: Around): Way {
  readAttributes(reading, node);
  const { label, body } = partsOf(node);
  const words = label === undefined ? '' : wordsOf(label.words);
  if (words === '') {
    tellLabel(reading, node, 'what the technician finds, such as [the belt is cracked]');
  }
  const phrasing = readPhrasing(reading, label?.words.children ?? [], {
    names: 'the words of a branch',
  });
  const inside = { ...around, outer: { name: node.name, tokens: tokensOf(node) } };
  return {
    label: words,
    phrasing,
    blocks: readBlocks(reading, body, inside),
    place: reading.placeOf(node),
  };
}
