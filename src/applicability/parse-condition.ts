import type { Condition, Group, Name, Span } from './condition.ts';
import type { ConditionSyntaxProblem, Expected } from './condition-problem.ts';
import { RESERVED, type Sign, type Token, tokenize } from './tokens.ts';

export type ParsedCondition =
  | { readonly value: Condition; readonly problems: readonly [] }
  | { readonly value?: undefined; readonly problems: readonly [ConditionSyntaxProblem] };

/** How deep brackets and negations may nest. */
const DEPTH_LIMIT = 100;

/** The grammar's functions give back the problem in place of what they read; the first one ends the parse. */
type Read<T> = T | ConditionSyntaxProblem;

/**
 * Reads a condition such as `feed = hydraulic & !(engine in (petrol, diesel) | winch)`.
 * `&` binds closer than `|`; the words `and`, `or`, `not` mean the same as the signs.
 */
export function parseCondition(text: string): ParsedCondition {
  const { tokens, problem } = tokenize(text);
  if (problem !== undefined) return { problems: [problem] };
  if (tokens.length === 0) return { problems: [{ code: 'empty', start: 0, end: text.length }] };
  const value = new Parser(tokens, text.length).whole();
  return isProblem(value) ? { problems: [value] } : { value, problems: [] };
}

function isProblem<T extends object>(read: Read<T>): read is ConditionSyntaxProblem {
  return 'code' in read;
}

class Parser {
  readonly #tokens: readonly Token[];
  readonly #end: number;
  #at = 0;
  #depth = 0;

  constructor(tokens: readonly Token[], end: number) {
    this.#tokens = tokens;
    this.#end = end;
  }

  whole(): Read<Condition> {
    const condition = this.#any();
    if (isProblem(condition) || this.#at === this.#tokens.length) return condition;
    return this.#wrong('an operator');
  }

  #any(): Read<Condition> {
    return this.#group('any', '|', 'or', () => this.#all());
  }

  #all(): Read<Condition> {
    return this.#group('all', '&', 'and', () => this.#unary());
  }

  #group(
    kind: Group['kind'],
    sign: Sign,
    word: string,
    part: () => Read<Condition>,
  ): Read<Condition> {
    const from = this.#at;
    const first = part();
    if (isProblem(first)) return first;
    const rest: Condition[] = [];
    while (this.#takeSign(sign) ?? this.#takeWord(word)) {
      const next = part();
      if (isProblem(next)) return next;
      rest.push(next);
    }
    const [second, ...others] = rest;
    if (second === undefined) return first;
    return { kind, of: [first, second, ...others], ...this.#span(from) };
  }

  #unary(): Read<Condition> {
    const from = this.#at;
    const not = this.#takeSign('!') ?? this.#takeWord('not');
    const opening = not ?? this.#takeSign('(');
    if (opening === undefined) return this.#test();
    if (this.#depth === DEPTH_LIMIT) {
      return { code: 'too-deep', limit: DEPTH_LIMIT, start: opening.start, end: opening.end };
    }
    this.#depth += 1;
    const inner = not === undefined ? this.#any() : this.#unary();
    this.#depth -= 1;
    if (isProblem(inner)) return inner;
    if (not !== undefined) return { kind: 'not', of: inner, ...this.#span(from) };
    return this.#close(opening, 'an operator') ?? inner;
  }

  #test(): Read<Condition> {
    const never = this.#takeWord('never');
    if (never !== undefined) return { kind: 'never', start: never.start, end: never.end };
    const from = this.#at;
    const quoted = this.#tokens[from]?.kind === 'quoted';
    const attribute = this.#name('a test');
    if (isProblem(attribute)) return attribute;
    const equals = this.#takeSign('=');
    if (equals ?? this.#takeSign('!=')) {
      const value = this.#name('a value');
      if (isProblem(value)) return value;
      const negated = equals === undefined;
      return { kind: 'test', attribute, negated, values: [value], ...this.#span(from) };
    }
    const negated = this.#isWord(this.#at, 'not') && this.#isWord(this.#at + 1, 'in');
    if (negated) this.#at += 1;
    if (this.#takeWord('in')) {
      const list = this.#values();
      if (isProblem(list)) return list;
      return { kind: 'test', attribute, negated, values: list.values, ...this.#span(from) };
    }
    return quoted
      ? { kind: 'found', label: attribute.text, ...this.#span(from) }
      : { kind: 'bare', attribute, ...this.#span(from) };
  }

  #values(): Read<{ readonly values: readonly [Name, ...Name[]] }> {
    const opening = this.#takeSign('(');
    if (opening === undefined) return this.#wrong('a list of values');
    const first = this.#name('a value');
    if (isProblem(first)) return first;
    const values: [Name, ...Name[]] = [first];
    while (this.#takeSign(',')) {
      const next = this.#name('a value');
      if (isProblem(next)) return next;
      values.push(next);
    }
    return this.#close(opening, 'a comma or )') ?? { values };
  }

  #name(expected: Expected): Read<Name> {
    const token = this.#tokens[this.#at];
    if (token === undefined || token.kind === 'sign' || token.kind === 'stray') {
      return this.#wrong(expected);
    }
    if (token.kind === 'word' && RESERVED.has(token.text.toLowerCase()))
      return this.#wrong(expected);
    this.#at += 1;
    const text = token.kind === 'quoted' ? token.value : token.text;
    return { text, start: token.start, end: token.end };
  }

  /** From a token to the last one taken. */
  #span(from: number): Span {
    const start = this.#tokens[from]?.start ?? this.#end;
    return { start, end: this.#tokens[this.#at - 1]?.end ?? this.#end };
  }

  #close(opening: Token, expected: Expected): ConditionSyntaxProblem | undefined {
    if (this.#takeSign(')')) return undefined;
    if (this.#at < this.#tokens.length) return this.#wrong(expected);
    return { code: 'unclosed', opened: '(', start: opening.start, end: opening.end };
  }

  #wrong(expected: Expected): ConditionSyntaxProblem {
    const token = this.#tokens[this.#at];
    if (token === undefined) {
      return { code: 'incomplete', expected, start: this.#end, end: this.#end };
    }
    const { start, end, text: found } = token;
    const instead = insteadOf(token, expected);
    const problem = { code: 'unexpected', found, expected, start, end } as const;
    return instead === undefined ? problem : { ...problem, instead };
  }

  #takeSign(sign: Sign): Token | undefined {
    const token = this.#tokens[this.#at];
    if (token?.kind !== 'sign' || token.sign !== sign) return undefined;
    this.#at += 1;
    return token;
  }

  #takeWord(word: string): Token | undefined {
    if (!this.#isWord(this.#at, word)) return undefined;
    this.#at += 1;
    return this.#tokens[this.#at - 1];
  }

  #isWord(at: number, word: string): boolean {
    const token = this.#tokens[at];
    return token?.kind === 'word' && token.text.toLowerCase() === word;
  }
}

function insteadOf(token: Token, expected: Expected): string | undefined {
  if (token.kind === 'stray') return token.instead;
  const reserved = token.kind === 'word' && RESERVED.has(token.text.toLowerCase());
  return reserved && expected === 'a value' ? `"${token.text}"` : undefined;
}
