import { type Amount, writtenAmount } from './amount.ts';
import { matchAt } from './match-at.ts';
import type { QuantityProblem, Stretch } from './problem.ts';

/** A number found at a place: its amount, or why there is none. `written` is for messages. */
export type NumberReading = Stretch & {
  readonly written: string;
  readonly amount?: Amount;
  readonly problem?: QuantityProblem;
};

/** What a number may begin with, as the source of a regular expression. */
export const numberStart = '[-−+]?(?:\\d|\\.\\d|[¼-¾⅐-⅞])';

const numberStartPattern = new RegExp(numberStart, 'y');

/** Reads the number that begins exactly here; undefined when none does. */
export function readNumber(text: string, at: number): NumberReading | undefined {
  if (!matchAt(numberStartPattern, text, at)) return undefined;
  const sign = matchAt(/[-−+]?/y, text, at)?.[0] ?? '';
  const from = at + sign.length;
  const minus = sign === '' || sign === '+' ? '' : '-';
  return (
    vulgarFraction(text, at, from, minus) ??
    slashFraction(text, at, from, minus) ??
    commaNumber(text, at, from, minus) ??
    plainNumber(text, at, from, minus)
  );
}

/** More digits than a double can hold are a slip of the keyboard, not a measurement. */
const mostDigits = 15;

function vulgarFraction(text: string, at: number, from: number, minus: string) {
  const match = matchAt(/(?:(\d+)[-\s]?)?([¼-¾⅐-⅞])/y, text, from);
  if (!match) return undefined;
  const [, whole, sign = ''] = match;
  const fraction = sign.normalize('NFKD').replace('⁄', '/');
  const instead = minus + (whole === undefined ? fraction : `${whole}-${fraction}`);
  const stretch = stretchOf(text, at, from + match[0].length);
  return { ...stretch, problem: { code: 'vulgar-fraction' as const, ...stretch, instead } };
}

function slashFraction(text: string, at: number, from: number, minus: string) {
  const match = matchAt(/(?:(\d+)(?:-|\s))?(\d+)[/⁄∕](\d+)(?![\d/⁄∕]|[.,]\d)/y, text, from);
  if (!match) return undefined;
  const [, whole, above = '', below = ''] = match;
  const stretch = stretchOf(text, at, from + match[0].length);
  if ((whole ?? '').length + above.length + below.length > mostDigits) return unreadable(stretch);
  const isMixed = whole !== undefined;
  if (Number(below) === 0 || (isMixed && Number(above) >= Number(below)))
    return unreadable(stretch);
  return understood(stretch, `${minus}${isMixed ? `${whole}-` : ''}${above}/${below}`);
}

function commaNumber(text: string, at: number, from: number, minus: string) {
  const match = matchAt(/\d+(?:,\d+)+(?:\.\d+)?(?![\d,]|\.\d)/y, text, from);
  if (!match) return undefined;
  const stretch = stretchOf(text, at, from + match[0].length);
  const instead = commaMeanings(match[0]).map((meaning) => minus + meaning);
  return { ...stretch, problem: { code: 'decimal-comma' as const, ...stretch, instead } };
}

/** What a number with commas may mean: a decimal, a number grouped in thousands, both, or neither. */
function commaMeanings(written: string): readonly string[] {
  const meanings: string[] = [];
  if (/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(written)) meanings.push(written.replaceAll(',', ''));
  if (/^\d+,\d+$/.test(written)) meanings.push(written.replace(',', '.'));
  return meanings;
}

function plainNumber(text: string, at: number, from: number, minus: string): NumberReading {
  const grouped = matchAt(/\d{1,3}(?:\s\d{3})+(?!\d)(?:\.\d+)?/y, text, from);
  const match = grouped ?? matchAt(/(?:\d+(?:\.\d+)?|\.\d+)/y, text, from);
  const end = from + (match?.[0].length ?? 0);
  const more = matchAt(/(?:[.,:_/⁄∕]?\d|['’]\d{3}(?!\d)|e[-+]?\d)+|\.(?=\s+\p{L})/iuy, text, end);
  if (!match || more) return unreadable(stretchOf(text, at, end + (more?.[0].length ?? 0)));
  const stretch = stretchOf(text, at, end);
  const digits = match[0].replace(/\s/gu, '');
  if (digits.replace('.', '').length > mostDigits) return unreadable(stretch);
  if (!digits.startsWith('.')) return understood(stretch, minus + digits);
  const standard = `${minus}0${digits}`;
  return {
    ...understood(stretch, standard),
    problem: { code: 'number-spelling', ...stretch, standard },
  };
}

function stretchOf(text: string, start: number, end: number) {
  return { start, end, written: text.slice(start, end) };
}

function understood(stretch: Stretch & { written: string }, written: string): NumberReading {
  return { ...stretch, amount: writtenAmount(written) };
}

function unreadable(stretch: Stretch & { written: string }): NumberReading {
  return { ...stretch, problem: { code: 'number-unreadable', ...stretch } };
}
