import { otherCommands, type WorkVerb, workVerbs } from '../wording/work-verbs.ts';
import { blank } from './running-text.ts';
import { longestSentence } from './sentences.ts';

/** A verb of work that a sentence commands. Offsets count in the sentence; `object` is what follows, to the end of the clause. */
export interface Command {
  readonly verb: WorkVerb;
  readonly start: number;
  readonly end: number;
  readonly object: string;
}

/** Finds the commands of a sentence; for each place all readings are given, likeliest first. */
export type CommandReader = (sentence: string) => Command[][];

/**
 * Commands stand at the start of a sentence, or after a comma, semicolon, "and" or "then" that goes on with them. For
 * each place all readings are given; which one is meant, the object decides.
 */
export function commandReader(verbs: readonly WorkVerb[]): CommandReader {
  const commandsAt = readerAt(verbs);
  return (sentence) => {
    if (sentence.length > longestSentence) return [];
    if (/^\W*(?:do not|don't|don’t|never|avoid|no)\b/i.test(sentence)) return [];
    return placesFor(sentence)
      .map((at) => commandsAt(sentence, at))
      .filter((readings) => readings.length > 0);
  };
}

const manner =
  '(?:(?:then|now|next|first|again|also|finally|fully|just|only|[a-z]{3,}ly)\\b,?\\s+)*';
const starting = new RegExp(`^[\\s("“]*${manner}`, 'i');
const joining = new RegExp(`(?:[;,]\\s*(?:and\\s+)?|\\band\\s+|\\bthen\\s+)${manner}`, 'gi');

function placesFor(sentence: string): number[] {
  const first = starting.exec(sentence)?.[0].length ?? 0;
  const later = [...sentence.matchAll(joining)]
    .filter(({ index, 0: words }) => goesOn(sentence.slice(0, index), words))
    .map(({ index, 0: words }) => index + words.length);
  return [...new Set([first, ...later])];
}

const command = new RegExp(
  `^[\\s("“]*${manner}(?:${blank}|(?:${otherCommands}|${workVerbs.map(({ words }) => words).join('|')})\\b)`,
  'i',
);
const condition =
  /^\W*(?:if|when|once|after|before|while|with|to|at|on|in|for|using|as|where|until|from|by)\b/i;

/** Whether a command may follow what stands before a joining word. */
function goesOn(before: string, words: string): boolean {
  if (/^;|then/i.test(words)) return true;
  const clause = before.split(/[;:,]/).at(-1) ?? '';
  // "After you drain, fill and bleed the system": a verb alone goes on with what stands before it.
  if (command.test(clause) && (clause.includes(blank) || /\S\s+\S/.test(clause))) return true;
  return words.startsWith(',') && condition.test(before) && !/,/.test(before);
}

/** Every way to read the words at a place as a command, likeliest first. */
function readerAt(verbs: readonly WorkVerb[]): (sentence: string, at: number) => Command[] {
  const anyVerb = new RegExp(`(?:${verbs.map(({ words }) => words).join('|')})\\b`, 'iy');
  const patterns = verbs.map((verb) => ({
    verb,
    words: new RegExp(`${verb.words}\\b`, 'iy'),
    particle:
      verb.particle === undefined
        ? undefined
        : new RegExp(`^\\s+(?:[\\p{L}\\p{N}-]+\\s+){1,5}${verb.particle}\\b`, 'iu'),
  }));
  return (sentence, at) => {
    anyVerb.lastIndex = at;
    if (!anyVerb.test(sentence)) return [];
    return patterns.flatMap(({ verb, words, particle }) => {
      words.lastIndex = at;
      const match = words.exec(sentence);
      if (match === null) return [];
      const end = at + match[0].length;
      const object = clauseFrom(sentence.slice(end));
      return particle?.test(object) === false ? [] : [{ verb, start: at, end, object }];
    });
  };
}

/** To the next sign, or to a joining word that another command may follow. */
function clauseFrom(rest: string): string {
  const end = rest.search(/[.;:,!?()]|\s(?:and|then|while|until|so|if|when|before|after)\s/i);
  return end < 0 ? rest : rest.slice(0, end);
}

/** Commands of work that are sure. */
export const commandsIn: CommandReader = commandReader(workVerbs);
