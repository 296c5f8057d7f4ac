import type { Heading, RootContent } from 'mdast';
import type { Place } from '../../schemas/finding.ts';
import { wordsOf } from './action.ts';
import { nowhere } from './around.ts';
import { readBlocks } from './blocks.ts';
import type { Section } from './model.ts';
import { readPhrasing } from './phrasing.ts';
import { type Reading, spanOf } from './reading.ts';
import { slugOf } from './slug.ts';

/** The text cut at its headings. What stands before the first one is left out when there is nothing. */
export function readSections(reading: Reading, nodes: readonly RootContent[]): Section[] {
  const ids = new SectionIds(reading);
  const sections: Section[] = [];
  for (const { heading, content } of cutAtHeadings(nodes)) {
    const first = heading ?? content[0];
    const last = content.at(-1) ?? heading;
    if (first === undefined || last === undefined) continue;
    const phrasing = readPhrasing(reading, heading?.children ?? [], { names: 'a heading' });
    const span = { start: spanOf(first).start, end: spanOf(last).end };
    const scope = heading === undefined ? undefined : span;
    const blocks = readBlocks(reading, content, { ...nowhere, scope });
    if (heading === undefined && blocks.length === 0) continue;
    sections.push({
      id: ids.idOf(heading),
      title: heading && wordsOf(heading),
      heading: phrasing,
      depth: heading?.depth ?? 0,
      headingPlace: heading && reading.placeOf(heading),
      blocks,
      place: reading.place(span),
    });
  }
  return sections;
}

function cutAtHeadings(
  nodes: readonly RootContent[],
): { heading: Heading | undefined; content: RootContent[] }[] {
  let current: { heading: Heading | undefined; content: RootContent[] } = {
    heading: undefined,
    content: [],
  };
  const cuts = [current];
  for (const node of nodes) {
    if (node.type === 'heading') {
      current = { heading: node, content: [] };
      cuts.push(current);
    } else if (node.type !== 'yaml') current.content.push(node);
  }
  return cuts;
}

/** Gives each section an id of its own, and tells headings with the same words. */
class SectionIds {
  readonly #reading: Reading;
  readonly #taken = new Set<string>();
  readonly #firsts = new Map<string, Place>();

  constructor(reading: Reading) {
    this.#reading = reading;
  }

  idOf(heading: Heading | undefined): string {
    if (heading === undefined) return this.#free('start');
    const slug = slugOf(wordsOf(heading));
    const place = this.#reading.placeOf(heading);
    const first = this.#firsts.get(slug);
    if (first === undefined) this.#firsts.set(slug, place);
    else this.#reading.facts.push({ kind: 'section-twice', place, first, id: slug });
    return this.#free(slug);
  }

  #free(slug: string): string {
    let id = slug;
    for (let n = 2; this.#taken.has(id); n++) id = `${slug}-${n}`;
    this.#taken.add(id);
    return id;
  }
}
