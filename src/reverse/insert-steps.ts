import type { Edit } from '../../schemas/finding.ts';
import type { Procedure, Step, StepList } from '../syntax/index.ts';
import { listOf, type WrittenStep } from './undo-text.ts';

interface Placed {
  readonly step: WrittenStep;
  /** Undefined for the end of the procedure. */
  readonly before: Step | undefined;
}

/** Edits that write steps into a procedure's text, each before its step, with the numbers after them put right. */
export function insertionsIn(procedure: Procedure, placed: readonly Placed[]): readonly Edit[] {
  const lists = listsIn(procedure);
  const last = lists.at(-1);
  const edits: Edit[] = [];
  const atEnd: WrittenStep[] = [];
  for (const list of lists) {
    let shift = 0;
    for (const step of list.steps) {
      const here = placed.filter(({ before }) => before !== undefined && holds(step, before));
      const marker = markerOf(procedure, step);
      if (marker === undefined) continue;
      const { offset } = step.place.start;
      const edit = (start: number, end: number, text: string) =>
        edits.push({ file: procedure.file, start, end, text });
      if (here.length > 0) {
        const indent = ' '.repeat(step.place.start.column - 1);
        const text = listOf(
          here.map((one) => one.step),
          marker.number + shift,
          indent,
        );
        edit(offset, offset, `${text.trimStart()}\n${indent}`);
        shift += here.length;
      }
      if (shift > 0) edit(offset, offset + marker.width, String(marker.number + shift));
    }
  }
  for (const { step, before } of placed) {
    const isPlaced =
      before !== undefined && lists.some((list) => list.steps.some((one) => holds(one, before)));
    if (!isPlaced) atEnd.push(step);
  }
  if (atEnd.length > 0) edits.push(appended(procedure, last, atEnd, edits));
  return edits;
}

function appended(
  procedure: Procedure,
  list: StepList | undefined,
  steps: readonly WrittenStep[],
  before: readonly Edit[],
): Edit {
  const step = list?.steps.at(-1);
  const marker = step && markerOf(procedure, step);
  if (list === undefined || step === undefined || marker === undefined) {
    const { length } = procedure.text;
    const gap = procedure.text.endsWith('\n') ? '\n' : '\n\n';
    return {
      file: procedure.file,
      start: length,
      end: length,
      text: `${gap}## Installation\n\n${listOf(steps)}\n`,
    };
  }
  const inserted = before.filter(
    ({ start, end, text }) => start === end && start >= list.place.start.offset && text !== '',
  );
  const shift = inserted.reduce(
    (sum, { text }) => sum + (text.match(/^\s*\d+\. /gm)?.length ?? 0),
    0,
  );
  const indent = ' '.repeat(step.place.start.column - 1);
  const { offset } = step.place.end;
  const text = `\n${listOf(steps, marker.number + shift + 1, indent)}`;
  return { file: procedure.file, start: offset, end: offset, text };
}

/** Numbered lists that stand in the text itself, not those that `::reverse` writes out. */
function listsIn(procedure: Procedure): readonly StepList[] {
  return procedure.sections.flatMap((section) =>
    section.blocks.flatMap((block) =>
      block.type === 'steps' && block.steps.some((step) => markerOf(procedure, step) !== undefined)
        ? [block]
        : [],
    ),
  );
}

function markerOf(procedure: Procedure, step: Step): { number: number; width: number } | undefined {
  const digits = /^(\d{1,9})[.)]/.exec(procedure.text.slice(step.place.start.offset))?.[1];
  return digits === undefined ? undefined : { number: Number(digits), width: digits.length };
}

const holds = (outer: Step, inner: Step): boolean =>
  outer === inner ||
  (outer.place.start.offset <= inner.place.start.offset &&
    inner.place.end.offset <= outer.place.end.offset);
