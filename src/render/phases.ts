import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Section } from '../syntax/index.ts';
import { prose } from './prose.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';

/** Sections of a procedure, each with its heading. */
export function phases(context: SheetContext): ElementContent[] {
  return context.sections.flatMap((section) => phase(section, context));
}

/** The rank of each section's heading; they go down one at a time from that of the title above them. */
export function headingRanks(
  sections: readonly Section[],
  title: number,
): ReadonlyMap<Section, number> {
  let rank = title;
  return new Map(
    sections.map((section) => {
      const wanted = Math.min(section.depth + title - 1, rank + 1);
      rank = section.title === undefined ? title : Math.min(6, Math.max(title + 1, wanted));
      return [section, rank];
    }),
  );
}

function phase(section: Section, context: SheetContext): Element[] {
  const id = context.phaseId(section);
  const content = context.blocks(section.blocks);
  const when = shownWhen(context.presence.blocks(section.blocks));
  if (section.title === undefined) {
    return content.length === 0 ? [] : [h('section.phase', { id, ...when }, content)];
  }
  const rank = context.ranks.get(section) ?? 2;
  const heading = h(`h${rank}`, prose(section.heading, context));
  return [h('section.phase', { id, ...when }, [heading, ...content])];
}
