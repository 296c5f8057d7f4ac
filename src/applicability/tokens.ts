import type { Span } from './condition.ts';
import type { ConditionSyntaxProblem } from './condition-problem.ts';

export type Sign = '&' | '|' | '!' | '=' | '!=' | '(' | ')' | ',';

/** A piece of a condition. `stray` is a sign that conditions do not use, with the one they use instead. */
export type Token = Span &
  (
    | { readonly kind: 'sign'; readonly sign: Sign; readonly text: string }
    | { readonly kind: 'word'; readonly text: string }
    | { readonly kind: 'quoted'; readonly text: string; readonly value: string }
    | { readonly kind: 'stray'; readonly text: string; readonly instead?: string }
  );

const ASCII_SIGNS = new Map<string, Sign>(
  (['&', '|', '!', '=', '!=', '(', ')', ','] as const).map((sign) => [sign, sign]),
);

const STRAY = new Map<string, string | undefined>([
  ['&&', '&'],
  ['||', '|'],
  ['==', '='],
  ['!==', '!='],
  ['<>', '!='],
  [':', '='],
  ['≠', '!='],
  ['<', undefined],
  ['>', undefined],
  ['<=', undefined],
  ['>=', undefined],
]);

const WORD = '[^\\s&|!()=,"\'<>:≠]+';
const PIECE = new RegExp(`\\s+|&&?|\\|\\|?|!={0,2}|==?|<>|[<>]=?|[:≠(),]|${WORD}`, 'uy');
const WHOLE_WORD = new RegExp(`^${WORD}$`, 'u');

/** Words with a meaning of their own, whatever their case; as names they stand in quotation marks. */
export const RESERVED: ReadonlySet<string> = new Set(['and', 'or', 'not', 'in', 'never']);

/** True if `name` can stand in a condition without quotation marks. */
export function isPlainName(name: string): boolean {
  return WHOLE_WORD.test(name) && !RESERVED.has(name.toLowerCase());
}

/** Cuts a condition into tokens; an unclosed quotation is the one fault that can be seen here. */
export function tokenize(text: string): {
  readonly tokens: readonly Token[];
  readonly problem?: ConditionSyntaxProblem;
} {
  const tokens: Token[] = [];
  let start = 0;
  while (start < text.length) {
    const first = text.charAt(start);
    if (first === '"' || first === "'") {
      const quoted = readQuoted(text, start);
      if (quoted === undefined) {
        const problem = { code: 'unclosed', opened: first, start, end: text.length } as const;
        return { tokens, problem };
      }
      tokens.push(quoted);
      start = quoted.end;
      continue;
    }
    PIECE.lastIndex = start;
    const piece = PIECE.exec(text)?.[0] ?? first;
    const end = start + piece.length;
    if (piece.trim() !== '') tokens.push(classify(piece, start, end));
    start = end;
  }
  return { tokens };
}

function classify(text: string, start: number, end: number): Token {
  const sign = ASCII_SIGNS.get(text);
  if (sign !== undefined) return { kind: 'sign', sign, text, start, end };
  if (!STRAY.has(text)) return { kind: 'word', text, start, end };
  const instead = STRAY.get(text);
  return instead === undefined
    ? { kind: 'stray', text, start, end }
    : { kind: 'stray', text, instead, start, end };
}

/** A backslash takes the next character as it is. */
function readQuoted(text: string, start: number): Token | undefined {
  const mark = text.charAt(start);
  let value = '';
  for (let at = start + 1; at < text.length; at += 1) {
    const char = text.charAt(at);
    if (char === mark) {
      const end = at + 1;
      return { kind: 'quoted', value, text: text.slice(start, end), start, end };
    }
    if (char === '\\') at += 1;
    value += char === '\\' ? text.charAt(at) : char;
  }
  return undefined;
}
