/** A hazard or a harm as a phrase: whoever shows it ends the sentence. */
export const unended = (text: string): string => text.trim().replace(/\.$/, '');
