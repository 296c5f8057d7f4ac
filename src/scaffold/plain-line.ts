/** A text as one line without signs that nobody sees; empty where nothing is left. */
export function plainLine(text: string): string {
  return text
    .toWellFormed()
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replace(/[\p{Bidi_Control}\uFEFF\uFFFE\uFFFF]/gu, '')
    .trim();
}
