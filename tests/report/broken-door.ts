import fc from 'fast-check';
import type { ManualFiles } from '../../src/source/index.ts';
import { brokenManual, soundManual } from '../command/run.ts';

/** The texts of a manual with two findings: screws that stay loose, a pin that stays out. */
export const brokenTexts: Readonly<Record<keyof typeof brokenManual, string>> = brokenManual;

interface Changes {
  /** Beginnings of lines that are left out. */
  readonly without?: readonly string[];
  readonly change?: readonly (readonly [string, string])[];
  /** Steps in the place of those that there are. */
  readonly body?: string;
}

/** A sound procedure of four steps, changed. */
export function door({ without = [], change = [], body }: Changes = {}): string {
  let text: string = soundManual['procedures/oil-hinge.md'];
  if (body !== undefined) text = text.slice(0, text.indexOf('1. ')) + body;
  text = text
    .split('\n')
    .filter((line) => !without.some((start) => line.startsWith(start)))
    .join('\n');
  for (const [from, to] of change) {
    if (!text.includes(from)) throw new Error(`${from} is not in the text`);
    text = text.replace(from, () => to);
  }
  return text;
}

/** Copies of a manual in which a stretch of one text is cut or doubled. */
export const damagedFrom = (manual: ManualFiles): fc.Arbitrary<ManualFiles> =>
  fc
    .record({ file: fc.nat(), from: fc.nat(), length: fc.nat(400), isCut: fc.boolean() })
    .map(({ file, from, length, isCut }) => ({
      ...manual,
      texts: manual.texts.map(({ path, text }, i) => {
        if (i !== file % manual.texts.length) return { path, text };
        const start = from % (text.length + 1);
        const words = text.slice(start, start + length);
        const middle = isCut ? '' : words + words;
        return { path, text: text.slice(0, start) + middle + text.slice(start + length) };
      }),
    }));
