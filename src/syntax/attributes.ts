import type { Directives } from 'mdast-util-directive';
import { z } from 'zod';
import type { Place } from '../../schemas/finding.ts';
import { expectedOf, nearest, oneOf } from '../source/index.ts';
import { type AttributeToken, type Span, tokensOf } from './directive-tokens.ts';
import type { Ref, When, Written } from './model.ts';
import type { Reading } from './reading.ts';
import { readWhen } from './when.ts';

/** The attributes of a directive that are as they should be; those that are not are told and left out. */
export interface Attributes<T> {
  readonly values: T;
  place(name: keyof T & string): Place;
  written(name: keyof T & string): Written | undefined;
  ref(name: keyof T & string): Ref | undefined;
  refs(name: keyof T & string): readonly Ref[];
  when(): When | undefined;
}

/** Makes the function that reads the attributes of a directive by a schema. */
export function attributeReader<S extends z.ZodRawShape>(schema: z.ZodObject<S, z.core.$strict>) {
  const partial = schema.partial();
  const fields = new Map(Object.entries(schema.shape));
  const allowed = [...fields.keys()];
  const required = [...fields].filter(([, field]) => !z.safeParse(field, undefined).success);

  return (reading: Reading, directive: Directives) => {
    const tokens = new Map<string, AttributeToken>();
    const missed = new Set(required.map(([name]) => name));
    const tell = (
      attribute: string,
      span: Span,
      expected: string,
      found?: string,
      near?: string,
    ): void => {
      reading.facts.push({
        kind: 'attribute-wrong',
        place: reading.place(span),
        directive: directive.name,
        attribute,
        expected,
        ...(found === undefined ? {} : { found }),
        ...(near === undefined ? {} : { near }),
      });
    };

    for (const token of tokensOf(directive).attributes) {
      const { name, key } = token;
      missed.delete(name);
      if (tokens.has(name)) {
        tell(name, key, 'to be given once', reading.source(token.whole));
      } else if (fields.has(name)) tokens.set(name, token);
      else {
        const near = nearest(name, allowed);
        // A required one that is misspelt is one slip, not two.
        if (near !== undefined && !tokens.has(near)) missed.delete(near);
        const expected = allowed.length === 0 ? 'no attributes' : oneOf(allowed);
        tell(name, key, expected, reading.source(key), near);
      }
    }
    for (const [name, field] of required) {
      if (missed.has(name)) tell(name, tokensOf(directive).opening, expectedFor(field));
    }

    const given = () => Object.fromEntries([...tokens].map(([name, { text }]) => [name, text]));
    let result = partial.safeParse(given(), silent);
    while (!result.success) {
      const before = tokens.size;
      for (const { issue, name } of firstIssues(result.error.issues)) {
        const token = tokens.get(name);
        if (token === undefined) continue;
        const part = issue.path[1];
        const piece = typeof part === 'number' ? piecesOf(reading, token)[part] : undefined;
        tell(name, piece ?? spanOf(token), expectedOf(issue), piece?.text ?? token.text);
        tokens.delete(name);
      }
      if (tokens.size === before)
        throw new Error(`the attributes of ${directive.name} cannot be read`);
      result = partial.safeParse(given(), silent);
    }
    return attributesOf(result.data, reading, directive, tokens);
  };
}

const silent = { error: () => '' };

function attributesOf<T>(
  values: T,
  reading: Reading,
  directive: Directives,
  tokens: ReadonlyMap<string, AttributeToken>,
): Attributes<T> {
  const place = (name: string): Place => {
    const token = tokens.get(name);
    return reading.place(token === undefined ? tokensOf(directive).opening : spanOf(token));
  };
  return {
    values,
    place,
    written: (name) => {
      const token = tokens.get(name);
      return token && { text: token.text, place: place(name) };
    },
    ref: (name) => {
      const token = tokens.get(name);
      return token && { id: token.text, place: place(name) };
    },
    refs: (name) => {
      const token = tokens.get(name);
      if (token === undefined) return [];
      return piecesOf(reading, token).map((piece) => ({
        id: piece.text,
        place: reading.place(piece),
      }));
    },
    when: () => {
      const token = tokens.get('when');
      return token && readWhen(reading, token.text, spanOf(token));
    },
  };
}

/** The elements of a list such as `a, b`, each where it stands. */
function piecesOf(reading: Reading, token: AttributeToken): (Span & { text: string })[] {
  const { text } = token;
  const whole = spanOf(token);
  const isVerbatim = reading.source(whole) === text;
  return [...text.matchAll(/[^\s,]+/g)].map((match) => {
    const [piece] = match;
    const start = whole.start + match.index;
    return { text: piece, ...(isVerbatim ? { start, end: start + piece.length } : whole) };
  });
}

/** The value; where there is none to see, the whole attribute. */
function spanOf(token: AttributeToken): Span {
  const { value } = token;
  return value !== undefined && value.start < value.end ? value : token.whole;
}

/** The first fault of each attribute is enough. */
function firstIssues(
  issues: readonly z.core.$ZodIssue[],
): { issue: z.core.$ZodIssue; name: string }[] {
  const first = new Map<string, z.core.$ZodIssue>();
  for (const issue of issues) {
    const name = String(issue.path[0] ?? '');
    if (!first.has(name)) first.set(name, issue);
  }
  return [...first].map(([name, issue]) => ({ name, issue }));
}

/** What a field wants to have, in the words that it has for an empty value. */
function expectedFor(field: z.core.$ZodType): string {
  const result = z.safeParse(field, '', silent);
  const issue = result.success ? undefined : result.error.issues[0];
  return issue === undefined ? 'a value' : expectedOf(issue);
}
