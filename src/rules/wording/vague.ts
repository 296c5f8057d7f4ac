import type { Phrase } from './reverse.ts';

/** Ways to say that something is to be tight without saying how tight. */
const vague =
  /\b(?:securely|firmly|sufficiently|adequately|properly|to (?:the )?(?:(?:correct|proper|right|required|specified|recommended|standard|given|stated) )?(?:specifications?|spec|specs)|to (?:the|its|their) (?:correct|proper|right|required|specified|recommended|standard|given|stated) (?:torque|tightness|value|figure)s?|to specified torque|tight enough|good and tight|as required|as necessary)\b/gi;

/** Verbs of tightening, as commands. "Torque wrench" is a tool. */
const tightening =
  /\b(?:re-?tighten|tighten|re-?torque|torque(?! wrench)|fasten|screw (?:in|down|up)|bolt down|do up)\b/gi;

/** Words after which another verb has begun, or a condition. */
const elsewhere = /[;:,()]|\b(?:and|then|while|until|but|so|or|to (?!the |its |their |spec))\b/i;

/**
 * The first vague word that goes with a verb of tightening, or with an action that tightens (`actions` gives the
 * offsets at which these begin).
 */
export function vagueTightening(sentence: string, actions: readonly number[]): Phrase | undefined {
  const verbs = [
    ...[...sentence.matchAll(tightening)].map(({ index, 0: words }) => ({
      start: index,
      end: index + words.length,
    })),
    ...actions.map((start) => ({ start, end: start })),
  ];
  for (const { index: start, 0: words } of sentence.matchAll(vague)) {
    const end = start + words.length;
    const goes = verbs.some((verb) => {
      if (verb.end <= start) return !elsewhere.test(sentence.slice(verb.end, start));
      return verb.start >= end && /^\s*$/.test(sentence.slice(end, verb.start));
    });
    if (goes) return { words, start, end };
  }
  return undefined;
}
