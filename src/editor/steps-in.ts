import { idWords } from '../derive/index.ts';
import { allSteps } from '../link/index.ts';
import type { Procedure, Step } from '../syntax/index.ts';

/** The steps of a procedure that have an id, each with the beginning of its words. */
export function stepsIn(procedure: Procedure | undefined): readonly (readonly [string, string])[] {
  if (procedure === undefined) return [];
  return [...allSteps(procedure)].flatMap((step) =>
    step.id === undefined ? [] : [[step.id.id, stepWords(step, procedure)] as const],
  );
}

/** The first line of a step that has words of its own, else what its first directive names. */
export function stepWords(step: Step, { text }: Procedure): string {
  const source = text
    .slice(step.place.start.offset, step.place.end.offset)
    .replace(/^\s*\d+[.)]\s*/, '');
  const line = firstLine(source, (named, colons) => (colons > 1 ? '' : named));
  const words = line === '' ? firstLine(source, (named) => named) : line;
  return words.length > 72 ? `${words.slice(0, 71)}…` : words;
}

const directive = /(:+)([a-z-]+)(?:\[((?:[^\][]|\[[^\]]*\])*)\])?(?:\{([^}]*)\})?/g;

/** `instead` has the words for a directive without words of its own: "remove anvil bolt". */
function firstLine(source: string, instead: (named: string, colons: number) => string): string {
  const plain = source
    .replaceAll(directive, (_, colons: string, name: string, label?: string, given = '') => {
      if (label !== undefined) return label;
      const id = /\b(?:item|procedure|of)="?([a-z0-9-]+)/.exec(given)?.[1];
      return id === undefined ? '' : instead(`${name} ${idWords(id)}`, colons.length);
    })
    .replaceAll(/[`*_]/g, '');
  const lines = plain.split(/\r?\n/).map((one) => one.trim().replaceAll(/\s+/g, ' '));
  return lines.find((one) => /[\p{L}\p{N}]/u.test(one)) ?? '';
}
