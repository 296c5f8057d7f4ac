import { onceFor } from './once-for.ts';
import type { RunningText } from './running-text.ts';

/** A sentence of a running text: offsets, end not included. */
export interface Sentence {
  readonly start: number;
  readonly end: number;
}

/** Words that end in a full stop without ending a sentence. */
const shortened =
  /(?:^|[\s(])(?:e\.g|i\.e|etc|approx|no|nos|fig|figs|max|min|incl|ref|vs|ca|cf|dia|qty|pos)\.$/i;

/** Nobody reads a sentence longer than this; what has no end is not taken for one. */
export const longestSentence = 2000;

/** The sentences of a running text, made once for all rules. */
export const sentencesOf: (text: RunningText) => readonly Sentence[] = onceFor(({ text }) =>
  sentencesIn(text),
);

/** The sentences of a text. A full stop inside a number or after a shortened word ends none. */
export function sentencesIn(text: string): Sentence[] {
  const sentences: Sentence[] = [];
  const ends = /[.!?]+["”’)\]]*(?=\s|$)/g;
  let start = 0;
  const close = (end: number): void => {
    const from = start + (/^\s*/.exec(text.slice(start, end))?.[0].length ?? 0);
    if (from < end) sentences.push({ start: from, end });
    start = end;
  };
  for (const match of text.matchAll(ends)) {
    const end = match.index + match[0].length;
    const before = text.slice(Math.max(0, match.index - 8), match.index + 1);
    if (!shortened.test(before)) close(end);
  }
  close(text.length);
  return sentences;
}
