/** Words that say that steps are to be done backwards. */
const backwards =
  /\b(?:in |is |are |by )?(?:the )?(?:reverse|opposite|inverse)(?: (?:order|sequence))?(?: (?:of|to|as|from))?(?: the)? (?:removal|disassembly|dismantling|stripping)(?: (?:procedure|steps|sequence|order))?\b|\bin (?:the )?reverse(?: (?:order|sequence)(?: (?:of|to|as|from)(?: the)?(?: \w+){0,2})?)?|\breverse (?:order|sequence) (?:of|to|as|from)(?: the)?(?: \w+){0,2}/i;

/** Only beside such words does "in reverse order" speak of putting together. */
const together =
  /\b(?:re-?assembl\w+|assembl\w+|(?:re-?)?install\w*|re-?fit\w*|fitting|put (?:it |them |all |everything )?(?:all )?back|rebuild\w*)\b|\b(?:removal|disassembly|dismantling|stripping)\b/i;

/** Fasteners may be let go in the reverse order of a tightening sequence; that is a sound instruction. */
const sequence =
  /\b(?:tighten\w*|loosen\w*|slacken\w*|torqu\w*|gear|drive|turn\w*|rotat\w*|run\w*)\b/i;

export interface Phrase {
  readonly words: string;
  readonly start: number;
  readonly end: number;
}

/** Where a sentence tells the reader to do steps backwards. */
export function reversePhrase(sentence: string): Phrase | undefined {
  const found = backwards.exec(sentence);
  if (found === null || !together.test(sentence)) return undefined;
  if (sequence.test(sentence) && !/\b(?:removal|disassembly|dismantling)\b/i.test(found[0]))
    return undefined;
  const words = found[0].trim();
  const start = found.index + found[0].indexOf(words);
  return { words, start, end: start + words.length };
}
