import type { Section } from '../syntax/index.ts';
import type { LinkedProcedure } from './linked.ts';

/** A section and the deeper ones below it. */
export function sectionsFrom({ procedure }: LinkedProcedure, first: Section): readonly Section[] {
  const start = procedure.sections.indexOf(first);
  const rest = procedure.sections.slice(start + 1);
  const end = rest.findIndex((section) => section.depth <= first.depth);
  return [first, ...(end < 0 ? rest : rest.slice(0, end))];
}
