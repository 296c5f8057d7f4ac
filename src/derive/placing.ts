import { type LinkedManual, type LinkedProcedure, sectionsFrom } from '../link/index.ts';
import type { Perform, Section } from '../syntax/index.ts';
import { aimedText, type Originals } from './aimed-text.ts';

/** The text of a job that is printed where it is performed. */
export interface PlacedText {
  /** Aimed at the instance at which it is done. */
  readonly one: LinkedProcedure;
  /** All of them, or those of the part that is done. */
  readonly sections: readonly Section[];
  readonly originals: Originals;
  /** What is printed in place inside it. */
  readonly placing: Placing;
}

/** The text that is printed for a job performed in a section; undefined where a reference stands for it. */
export type Placing = (perform: Perform, section: Section) => PlacedText | undefined;

/** Deeper ones are printed by reference. */
const mostLevels = 4;

/**
 * The jobs that a sheet prints in place: those that say so, down to four levels. One that would come round to
 * a section around it is left to a reference.
 *
 * @param open the sections around the text
 */
export function placingOn(
  manual: LinkedManual,
  one: LinkedProcedure,
  open: readonly string[] = [],
): Placing {
  return (perform, section) => {
    const target = manual.procedures.get(perform.procedure.id);
    if (!perform.inPlace || target === undefined || open.length >= mostLevels) return undefined;
    const { one: text, originals } =
      perform.each === undefined
        ? { one: target, originals: new Map() }
        : aimedText(target, perform.each);
    const first = perform.part && text.section(perform.part);
    if (perform.part !== undefined && first === undefined) return undefined;
    const sections = first === undefined ? text.procedure.sections : sectionsFrom(text, first);
    const around = [...open, keyOf(one, section)];
    if (sections.some((inner) => around.includes(keyOf(text, inner)))) return undefined;
    return { one: text, sections, originals, placing: placingOn(manual, text, around) };
  };
}

const keyOf = ({ procedure }: LinkedProcedure, { id }: Section): string => `${procedure.id}#${id}`;
