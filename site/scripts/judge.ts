/** What a reading is, held against its limits. */
export type Verdict =
  | { readonly is: 'empty' }
  | { readonly is: 'unclear'; readonly words: string }
  | { readonly is: 'within' }
  | { readonly is: 'below' | 'above'; readonly limit: number };

export interface Limits {
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/**
 * Judges what was typed. A number is digits with a decimal point, or with a comma that cannot stand for
 * thousands; whatever else is typed is not guessed at.
 */
export function judge(typed: string, { low, high }: Limits): Verdict {
  const text = typed.trim().replace(/^[−–]/, '-');
  if (text === '') return { is: 'empty' };
  const number = /^-?\d+([.,]\d+)?$/.test(text) ? text : undefined;
  if (number === undefined) return { is: 'unclear', words: 'Write a number, such as 1.2' };
  if (/^-?[1-9]\d{0,2},\d{3}$/.test(number))
    return {
      is: 'unclear',
      words: `Write ${number.replace(',', '.')} or ${number.replace(',', '')}`,
    };
  const value = Number(number.replace(',', '.'));
  if (low !== undefined && value < low) return { is: 'below', limit: low };
  if (high !== undefined && value > high) return { is: 'above', limit: high };
  return { is: 'within' };
}
