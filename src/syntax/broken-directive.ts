import type { Text } from 'mdast';
import type { Span } from './directive-tokens.ts';
import type { SyntaxFact } from './facts.ts';
import { type Form, howWritten, knownDirective, nearDirective } from './forms.ts';
import { type Reading, spanOf } from './reading.ts';

/**
 * Tells colons that were left as text but look like a directive: a closing line that closes nothing, a
 * directive in the middle of a line, braces or brackets that do not close, a space after the colons.
 */
export function tellBrokenDirectives(reading: Reading, node: Text): void {
  if (!node.value.includes('::')) return;
  const { start, end } = spanOf(node);
  const pattern = /(?<![:\\\p{L}\p{N}_])(:{2,})([ \t]*)([\p{L}\p{N}_-]*)([[{]?)/gu;
  for (const match of reading.source({ start, end }).matchAll(pattern)) {
    const [all, colons = '', gap = '', name = '', bracket = ''] = match;
    const at = start + match.index;
    const span = { start: at, end: at + all.length - bracket.length };
    const form: Form = colons.length === 2 ? 'leaf' : 'block';
    const fact =
      name === ''
        ? strayFence(reading, span, form)
        : brokenNamed(reading, span, { form, name, bracket, isApart: gap !== '' });
    if (fact !== undefined) reading.facts.push(fact);
  }
}

function strayFence(reading: Reading, span: Span, form: Form): SyntaxFact | undefined {
  const rest = /^[^\r\n]*/.exec(reading.text.slice(span.end, span.end + lookAround))?.[0] ?? '';
  if (form === 'leaf' || !startsLine(reading, span.start) || rest.trim() !== '') return undefined;
  return {
    kind: 'directive-misplaced',
    place: reading.place(span),
    name: ':::',
    found: 'a closing line that closes no block',
    expected:
      'one closing line for each block, and more colons on an outer block than on those inside it',
  };
}

interface Named {
  readonly form: Form;
  readonly name: string;
  /** The bracket or brace that follows the name; empty when there is none. */
  readonly bracket: string;
  /** True where blanks stand between the colons and the name. */
  readonly isApart: boolean;
}

function brokenNamed(reading: Reading, span: Span, named: Named): SyntaxFact | undefined {
  const { form, name, bracket, isApart } = named;
  const place = reading.place(span);
  const known = knownDirective(name);
  if (known === undefined) {
    if (bracket === '' || isApart) return undefined;
    const near = nearDirective(name, form);
    return {
      kind: 'directive-unknown',
      place,
      name,
      form,
      ...(near === undefined ? {} : { near }),
    };
  }
  const isOwnLine = startsLine(reading, span.start);
  if (isApart && bracket === '' && (!isOwnLine || form === 'leaf')) return undefined;
  if (isOwnLine && !isApart && bracket !== '') {
    return {
      kind: 'attribute-wrong',
      place,
      directive: name,
      attribute: bracket === '[' ? '[…]' : '{…}',
      expected:
        'brackets and braces that close on the same line, nothing after them, and quotes around a value that has spaces',
    };
  }
  return {
    kind: 'directive-misplaced',
    place,
    name,
    found: foundAs(reading, span, isOwnLine, isApart),
    expected: howWritten(name, known.forms),
  };
}

function foundAs(reading: Reading, span: Span, isOwnLine: boolean, isApart: boolean): string {
  if (!isOwnLine) return 'in the middle of a line';
  if (isApart) return 'with a space after the colons';
  const isBracketApart = /^[ \t]+[[{]/.test(reading.text.slice(span.end, span.end + lookAround));
  return isBracketApart
    ? 'with a space before its brackets or braces'
    : 'with other words on its line';
}

/** How far to look for the start and the end of a line that has nothing but markers or blanks there. */
const lookAround = 200;

function startsLine(reading: Reading, offset: number): boolean {
  const before = reading.text.slice(Math.max(0, offset - lookAround), offset);
  return /(?:^|[\r\n])[\s>]*(?:(?:[-+*]|\d{1,9}[.)])[\s>]+)*$/.test(before);
}
