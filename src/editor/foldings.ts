import { allBlocks, allSteps } from '../link/index.ts';
import type { Desk } from './desk.ts';
import { frontOf } from './front-at.ts';

/** A stretch of a text that can be folded away, if it has more than one line. */
export interface Folding {
  readonly from: number;
  readonly to: number;
}

/** The front matter, sections with those below them, steps and blocks of a procedure. */
export function foldingsOf(desk: Desk, file: string): readonly Folding[] {
  const text = desk.textOf(file);
  const written = desk.written(file);
  if (text === undefined || !file.endsWith('.md')) return [];
  const front = frontOf(text);
  const opening = text.startsWith('\uFEFF') ? 1 : 0;
  const folded: Folding[] = front === undefined ? [] : [{ from: opening, to: front.end }];
  if (written === undefined) return folded;
  const places = [
    ...[...allSteps(written)].map(({ place }) => place),
    ...[...allBlocks(written)].flatMap((block) =>
      block.type === 'prose' || block.type === 'steps' ? [] : [block.place],
    ),
  ];
  for (const { start, end } of places) folded.push({ from: start.offset, to: end.offset });
  for (const [i, section] of written.sections.entries()) {
    if (section.headingPlace === undefined) continue;
    const rest = written.sections.slice(i + 1);
    const found = rest.findIndex(({ depth }) => depth <= section.depth);
    const last = rest.slice(0, found < 0 ? rest.length : found).at(-1) ?? section;
    folded.push({ from: section.place.start.offset, to: last.place.end.offset });
  }
  return folded;
}
