import type { Place } from '../../schemas/finding.ts';
import type { Procedure } from '../../src/syntax/index.ts';

/** The author's text at a place, on one line. */
export function sourceWords({ text }: Procedure, { start, end }: Place): string {
  return text
    .slice(start.offset, end.offset)
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join(' ');
}
