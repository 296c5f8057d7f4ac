import { labelledSchema } from '../../schemas/directives.ts';
import type { Around } from './around.ts';
import { attributeReader } from './attributes.ts';
import { readBlocks } from './blocks.ts';
import { type BlockDirective, partsOf, tellLabel } from './label.ts';
import type { Block, When } from './model.ts';
import type { Reading } from './reading.ts';
import { readWhen } from './when.ts';

const readAttributes = attributeReader(labelledSchema);

/** `:::when[condition]` around blocks; the blocks alone, where the condition cannot be read. */
export function readGuarded(
  reading: Reading,
  node: BlockDirective,
  inside: Around,
): readonly Block[] {
  readAttributes(reading, node);
  const when = readCondition(reading, node);
  const blocks = readBlocks(reading, partsOf(node).body, inside);
  return when === undefined
    ? blocks
    : [{ type: 'guarded', when, blocks, place: reading.placeOf(node) }];
}

function readCondition(reading: Reading, node: BlockDirective): When | undefined {
  const span = partsOf(node).label?.span;
  const raw = span === undefined ? '' : reading.source(span);
  const written = raw.trim();
  if (span === undefined || written === '') {
    tellLabel(reading, node, 'a condition, such as [feed = hydraulic]');
    return undefined;
  }
  const start = span.start + raw.indexOf(written);
  return readWhen(reading, written, { start, end: start + written.length });
}
