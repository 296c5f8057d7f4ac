/** What a reader who meets such words must do: the same work again, go elsewhere, stop, or find out an order. */
export type Jump = 'again' | 'go' | 'stop' | 'order';

interface JumpWords {
  readonly jump: Jump;
  readonly words: RegExp;
  /** True where actions beside the words may do all the work: "Loosen the bolts, then the same for the others". */
  readonly isOfOthers?: true;
}

const number = '\\(?\\d{1,2}[a-z]?\\b\\)?';
const steps = `steps?\\s+(?:no\\.?\\s*)?${number}(?:\\s*(?:,|and|or|to|through|thru|-|–|—)\\s*(?:steps?\\s+)?${number})*`;
const earlier =
  '(?:these|those|the (?:above|previous|preceding|foregoing|last)|the (?:last )?(?:one|two|three|four|five|six|\\d{1,2}) (?:previous|preceding)|all (?:the )?(?:above|previous|preceding)) steps?';
const others =
  '(?:others?|rest|remaining|second|third|opposite|left|right|front|rear|upper|lower|inner|outer)';
const each = `(?:(?:the|all|all the|each of the)\\s+)?${others}\\b(?:[ -](?!(?:and|or|then|until|if|with|as|to|in|on|at|so)\\b)[a-z]+)?`;
const onEach = `(?:for|on|at|with|to)\\s+(?:${each}|each\\s+(?:side|end)\\b)`;
const work = '(?:procedure|job|work|task|steps|operation|sequence|process)';
/** Where a clause can begin. */
const clause = '(?<=^[\\s("“]*|[,;:.(–—]\\s*|\\b(?:and|then|now|next)\\s+)';

/** English words that send a reader to work that is written elsewhere or nowhere. */
const table: readonly JumpWords[] = [
  {
    jump: 'again',
    words: new RegExp(
      `\\b(?:repeat|redo|carry out|perform|go through|execute|reverse|undo|do)\\s+(?:again\\s+)?(?:${steps}|${earlier})`,
      'i',
    ),
  },
  {
    jump: 'again',
    words: new RegExp(
      `\\brepeat\\s+(?:(?:this|it|them|these|all this|the same|the above|(?:the|this)\\s+(?:whole\\s+|same\\s+)?${work})\\s+)?${onEach}`,
      'i',
    ),
    isOfOthers: true,
  },
  {
    jump: 'again',
    words: new RegExp(`${clause}do\\s+the\\s+same\\s+${onEach}`, 'i'),
    isOfOthers: true,
  },
  {
    jump: 'again',
    words: new RegExp(`${clause}(?:the\\s+)?same\\s+(?:${work}\\s+)?${onEach}`, 'i'),
    isOfOthers: true,
  },
  { jump: 'again', words: new RegExp(`${clause}likewise\\s+${onEach}`, 'i'), isOfOthers: true },
  {
    jump: 'again',
    words: new RegExp(
      `(?:\\b(?:proceed|continue|work|go on)\\s+)?\\bin\\s+(?:a\\s+similar|the\\s+same|like|a\\s+like)\\s+(?:manner|way|fashion)\\s+${onEach}`,
      'i',
    ),
    isOfOthers: true,
  },
  {
    jump: 'again',
    words:
      /\b(?:proceed|continue|go on)\s+in\s+(?:a\s+similar|the\s+same|like|a\s+like)\s+(?:manner|way|fashion)\b/i,
    isOfOthers: true,
  },
  {
    jump: 'go',
    words: new RegExp(
      `\\b(?:go|return|proceed|skip|jump|move|continue|resume|start|begin)(?:\\s+(?:back|on|ahead|again|over|directly|straight))*\\s+(?:to|at|from|with)\\s+${steps}`,
      'i',
    ),
  },
  {
    jump: 'stop',
    words:
      /\b(?:the|this)\s+(?:procedure|job|work|task)\s+is\s+(?:now\s+|then\s+)?(?:complete|completed|finished|done|over)\b/i,
  },
  {
    jump: 'order',
    words:
      /\bin\s+(?:the\s+)?(?:numerical\s+(?:sequence|order)|(?:sequence|order)\s+of\s+(?:the\s+)?(?:index\s+|item\s+|call-?out\s+)?numbers)(?:\s+(?:of|in|on|shown in|given in)\s+(?:the\s+)?fig(?:ure|\.)?\s*\d*)?/i,
  },
];

/** Where a sentence sends its reader elsewhere. */
export interface JumpPhrase {
  readonly jump: Jump;
  readonly words: string;
  readonly start: number;
  readonly end: number;
  readonly isOfOthers: boolean;
}

/** The first such words of a sentence, where they command and speak of now. */
export function jumpPhrase(sentence: string): JumpPhrase | undefined {
  if (!anyOfThem.test(sentence)) return undefined;
  for (const { jump, words, isOfOthers = false } of table) {
    const found = words.exec(sentence);
    if (found === null || notNow.test(sentence.slice(0, found.index))) continue;
    if (jump === 'order' && (fastening.test(sentence) || !taking.test(sentence))) continue;
    const start = found.index;
    const end = start + found[0].length;
    return { jump, words: found[0].replace(/\s+/g, ' '), start, end, isOfOthers };
  }
  return undefined;
}

/** Every phrase of the table has one of these. */
const anyOfThem =
  /\b(?:repeat|steps?|same|similar|like|likewise|complete|completed|finished|done|over|numerical|numbers)\b/i;

/** Directly before the words: they forbid, or speak of another time. */
const notNow =
  /\b(?:not|never|n't|n’t|without|when|whenever|once|before|after|until|unless|as soon as|if|whether|that)(?:\s+(?:you|to))?(?:\s+(?:must|have to|can|need to))?\s*$/i;

/** Fasteners are tightened in the order of their numbers; that is a sound instruction. */
const fastening = /\b(?:(?:re-?)?tighten\w*|loosen\w*|slacken\w*|(?:re-?)?torqu\w*)\b/i;

const taking =
  /\b(?:re-?assembl\w+|assembl\w+|disassembl\w+|dismantl\w+|remov\w+|(?:re-?)?install\w*|re-?fit\w*|take\b.*\bapart|put\b.*\b(?:together|back)|strip\w*)\b/i;

/** The work is done again until it is good, or where it is not: a loop, and not work that is missing. */
export const criterion = /\b(?:until|till|if|unless|as often as|as long as)\b/i;

/** Back to what was done, not over what is to be done. */
export const backwards = /\b(?:back|return|again|repeat|over)\b/i;
