import type { Text } from 'mdast';
import { knownDirective, nearDirective, written } from './forms.ts';
import { type Reading, spanOf } from './reading.ts';

/**
 * Tells words with the brackets and braces of a directive but no colon before them: `measure[the gap]{item=hook}`.
 * A word that is no directive must have `item=` in its braces.
 */
export function tellMissingColons(reading: Reading, node: Text): void {
  const span = spanOf(node);
  for (const match of reading.source(span).matchAll(directiveName)) {
    const [name] = match;
    const start = span.start + match.index;
    const end = start + name.length;
    const braces = openingAfter.exec(reading.text.slice(end, end + lookAhead))?.[1];
    if (braces === undefined) continue;
    const known = knownDirective(name) === undefined ? nearDirective(name, 'text') : name;
    if (known !== name && !/(?:^|\s)item=/.test(braces)) continue;
    const [form] = (known === undefined ? undefined : knownDirective(known)?.forms) ?? [];
    reading.facts.push({
      kind: 'colon-missing',
      place: reading.place({ start, end }),
      name,
      ...(known === undefined || form === undefined ? {} : { near: written(known, form) }),
    });
  }
}

const directiveName = /(?<![:\\\p{L}\p{N}_-])\p{L}[\p{L}\p{N}_-]{0,40}(?=[[{]|$)/gu;

/** Words in square brackets or none, and then braces that hold an attribute with a value. */
const openingAfter = /^(?:\[(?:[^[\]\\]|\\.)*\])?\{([^{}]*[\p{L}\p{N}]=[^{}]*)\}/u;

/** An opening is not longer than this, and the look is short where none is closed. */
const lookAhead = 600;
