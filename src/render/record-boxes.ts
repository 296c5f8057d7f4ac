import type { Element } from 'hast';
import { h } from 'hastscript';
import type { PrintedLimits } from '../quantity/index.ts';

/**
 * Places to write what was read or reached, on paper or on a tablet: one for each of several marks, such as
 * instances or numbers of pieces; without marks a single one. With limits the tablet says whether they are kept.
 */
export function recordBoxes(
  name: string,
  what: string,
  marks: readonly string[],
  limits?: PrintedLimits,
): Element[] {
  if (marks.length < 2) return [recordBox(`${[name, ...marks].join(', ')}: ${what}`, limits)];
  return marks.map((mark) =>
    h('div.nth', [h('span', mark), recordBox(`${name}, ${mark}: ${what}`, limits)]),
  );
}

function recordBox(label: string, limits: PrintedLimits | undefined): Element {
  const held =
    limits === undefined
      ? {}
      : { inputMode: 'decimal', dataLow: limits.low, dataHigh: limits.high, dataUnit: limits.unit };
  return h('input.record', { type: 'text', autoComplete: ['off'], ariaLabel: label, ...held });
}
