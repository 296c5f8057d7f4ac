import type { Nodes } from 'mdast';
import { waiveSchema } from '../../schemas/directives.ts';
import { wordsOf } from './action.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { tokensOf } from './directive-tokens.ts';
import { type BlockDirective, labelAndBody } from './label.ts';
import { readFlow } from './prose.ts';
import type { Reading } from './reading.ts';

const readAttributes = attributeReader(waiveSchema);

/**
 * Keeps what a waiver says. One with a faulty attribute is told and holds nothing: without its item or its
 * date it would let more pass than was meant.
 */
export function readWaiver(reading: Reading, node: BlockDirective, { scope }: Around): void {
  const before = reading.facts.length;
  const given = readAttributes(reading, node);
  const isFaulty = reading.facts.length > before;
  const reason = readFlow(reading, labelAndBody(node), { names: 'the reason of a waiver' });
  const rule = given.ref('rule');
  if (rule === undefined || isFaulty) return;
  reading.waivers.push({
    rule,
    item: given.ref('item'),
    until: given.written('until'),
    reason: reason.flatMap(paragraphs).filter(Boolean).join(' '),
    scope: reading.place(scope ?? { start: 0, end: reading.text.length }),
    place: reading.place(tokensOf(node).opening),
  });
}

/** The words of each innermost block. */
function paragraphs(node: Nodes): string[] {
  const isInner =
    !('children' in node) || ['paragraph', 'heading', 'tableCell'].includes(node.type);
  return isInner ? [wordsOf(node)] : node.children.flatMap(paragraphs);
}
