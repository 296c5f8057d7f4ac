import type { RootContent } from 'mdast';
import type { Place } from '../../schemas/finding.ts';
import { locator } from '../source/index.ts';
import { nowhere } from './around.ts';
import { readBlocks } from './blocks.ts';
import { beyondLimits } from './limits.ts';
import { parseMarkdown } from './markdown.ts';
import type { Block } from './model.ts';
import { readFlow } from './prose.ts';
import { Reading, type ReadingFact } from './reading.ts';
import { tooDeepTree } from './tree-depth.ts';

/**
 * Reads Markdown that stands in a YAML value: plain text, where no directive can be. All facts are at
 * `place`, the place of the value; the positions in the tree count from the start of `text`.
 */
export function parseMarkdownFragment(
  text: string,
  place: Place,
): { value: readonly RootContent[]; facts: readonly ReadingFact[] } {
  const source = locator(place.file, text);
  const beyond = beyondLimits(source);
  if (beyond !== undefined) return { value: [], facts: [{ ...beyond, place }] };
  const root = parseMarkdown(text);
  const deep = tooDeepTree(source, root);
  if (deep !== undefined) return { value: [], facts: [{ ...deep, place }] };
  const reading = new Reading(source, root);
  const value = readFlow(reading, root.children, { names: 'standing text' });
  return { value, facts: reading.facts.map((fact) => ({ ...fact, place })) };
}

/** Reads blocks that were written out for the author, such as the steps of `::reverse`. Every node is at `place`. */
export function parseBlocksAt(text: string, place: Place): readonly Block[] {
  const root = parseMarkdown(text);
  const source = { file: place.file, text, point: () => place.start, place: () => place };
  return readBlocks(new Reading(source, root), root.children, nowhere);
}
