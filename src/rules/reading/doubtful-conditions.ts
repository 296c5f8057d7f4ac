import type { Place } from '../../../schemas/finding.ts';
import { allBlocks, type LinkedProcedure } from '../../link/index.ts';
import type { Examined } from '../rule.ts';

/**
 * Whether it is open for which variants the text at a place holds, because a condition in force there cannot be read or
 * names what there is not. The condition is told, and what follows from the lack of it need not be.
 */
export function doubtfulConditions(examined: Examined): (place: Place) => boolean {
  const byFile = new Map(examined.subjects.map(({ one }) => [one.procedure.file, one]));
  const ranges = examined.facts('condition-wrong').flatMap(({ place, problem }) => {
    const one = byFile.get(place.file);
    const isUnderstood = problem.code === 'always-true' || problem.code === 'never-true';
    return one === undefined || isUnderstood ? [] : [rangeOf(one, place)];
  });
  return (place) => ranges.some((range) => contains(range, place));
}

/** The smallest block, step or section round a condition; all, where it stands in the front matter. */
function rangeOf({ procedure }: LinkedProcedure, condition: Place): Place {
  const around: Place[] = procedure.sections.map((section) => section.place);
  for (const block of allBlocks(procedure)) {
    if (block.type === 'guarded') around.push(block.place);
    if (block.type === 'steps') around.push(...block.steps.map((step) => step.place));
  }
  return around
    .filter((range) => contains(range, condition))
    .reduce((best, one) => (widthOf(one) < widthOf(best) ? one : best), procedure.place);
}

const contains = (range: Place, { file, start, end }: Place): boolean =>
  range.file === file && range.start.offset <= start.offset && end.offset <= range.end.offset;

const widthOf = ({ start, end }: Place): number => end.offset - start.offset;
