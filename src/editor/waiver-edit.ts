import type { Edit, Finding } from '../../schemas/finding.ts';
import { allSteps } from '../link/index.ts';
import type { Procedure, Step } from '../syntax/index.ts';
import type { Desk } from './desk.ts';
import { frontOf } from './front-at.ts';

/**
 * Writes a waiver with an empty line for its reason into the step that a finding stands in, else under the heading,
 * else at the start. Until the reason is written it lets nothing pass, and the check asks for it. Undefined for
 * findings in files that have no place for a waiver.
 */
export function waiverEdit(desk: Desk, finding: Finding): Edit | undefined {
  const written = desk.written(finding.file);
  if (written === undefined) return undefined;
  const { text, file } = written;
  const step = [...allSteps(written)].filter((one) => holds(one, finding)).at(-1);
  if (step !== undefined) {
    const at = step.place.end.offset;
    const indent = indentOf(text, step);
    return { file, start: at, end: at, text: `\n\n${waiver(finding, indent)}` };
  }
  const at = headingEnd(written, finding) ?? frontEnd(text);
  return { file, start: at, end: at, text: `\n\n${waiver(finding, '')}` };
}

function waiver({ rule, item }: Finding, indent: string): string {
  const about = item === undefined ? '' : ` item=${item}`;
  return `${indent}:::waive{rule=${rule}${about}}\n${indent}\n${indent}:::`;
}

function holds({ place }: Pick<Step, 'place'>, { start, end }: Finding): boolean {
  return place.start.offset <= start.offset && end.offset <= place.end.offset;
}

/** Blanks as wide as the number of the step and what stands before it. */
function indentOf(text: string, { place }: Step): string {
  const { offset, column } = place.start;
  const marker = /^(?:\d{1,9}[.)]|[-*+])[ \t]*/.exec(text.slice(offset))?.[0].length ?? 3;
  return ' '.repeat(column - 1 + marker);
}

function headingEnd({ sections }: Procedure, finding: Finding): number | undefined {
  return sections.find((section) => section.headingPlace !== undefined && holds(section, finding))
    ?.headingPlace?.end.offset;
}

/** Behind the closing line of the front matter. */
function frontEnd(text: string): number {
  const front = frontOf(text);
  if (front === undefined) return 0;
  return front.end + (/^---[ \t]*/.exec(text.slice(front.end))?.[0].length ?? 0);
}
