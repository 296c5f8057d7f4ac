import type { Condition, Test } from './condition.ts';
import { isPlainName } from './tokens.ts';

/** The condition as canonical text: signs for words, brackets around every group inside another. */
export function printCondition(condition: Condition): string {
  switch (condition.kind) {
    case 'test':
      return printTest(condition);
    case 'bare':
      // A quoted name alone would be read as a branch, so an odd name is compared in full.
      return isPlainName(condition.attribute.text)
        ? condition.attribute.text
        : `${printName(condition.attribute.text)} = yes`;
    case 'found':
      return quote(condition.label);
    case 'never':
      return 'never';
    case 'not':
      return condition.of.kind === 'test'
        ? `!(${printTest(condition.of)})`
        : `!${printPart(condition.of)}`;
    case 'all':
      return condition.of.map(printPart).join(' & ');
    case 'any':
      return condition.of.map(printPart).join(' | ');
  }
}

function printPart(condition: Condition): string {
  const text = printCondition(condition);
  return condition.kind === 'all' || condition.kind === 'any' ? `(${text})` : text;
}

function printTest({ attribute, negated, values }: Test): string {
  const name = printName(attribute.text);
  const [first, ...rest] = values.map((value) => printName(value.text));
  if (rest.length === 0) return `${name} ${negated ? '!=' : '='} ${first}`;
  return `${name} ${negated ? 'not in' : 'in'} (${[first, ...rest].join(', ')})`;
}

function printName(name: string): string {
  return isPlainName(name) ? name : quote(name);
}

function quote(text: string): string {
  return `"${text.replace(/["\\]/g, '\\$&')}"`;
}
