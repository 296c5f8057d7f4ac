/** Signs that join the parts of a number or a word: 26-1108, M22x1.5, N·m. Dashes of all lengths are one. */
const joints = /[-‐‑‒–—−./·_]+/u;

/**
 * The words of a text that is to be found: in small letters without accents. What is joined by hyphens,
 * dots or slashes is found as one and by its parts: 26-1108 gives 261108, 26 and 1108.
 */
export function indexTerms(text: string): string[] {
  return pieces(text).flatMap((piece) => {
    const parts = partsOf(piece);
    return parts.length > 1 ? [parts.join(''), ...parts] : parts;
  });
}

/** The words of a question. What is joined is looked for as one, so that no other number with the same parts is found. */
export function askedTerms(text: string): string[] {
  return pieces(text)
    .map((piece) => partsOf(piece).join(''))
    .filter((term) => term !== '');
}

/** True of words that must be found as they are typed or as a beginning: numbers, and what has digits in it. */
export function hasDigit(term: string): boolean {
  return /\p{N}/u.test(term);
}

const pieces = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}\-‐‑‒–—−./·_]+/u);

const partsOf = (piece: string): string[] => piece.split(joints).filter((part) => part !== '');
