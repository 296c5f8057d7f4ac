import type { Around } from './around.ts';
import { type Span, tokensOf } from './directive-tokens.ts';
import type { BlockDirective } from './label.ts';
import { tellMisplaced } from './misplaced.ts';
import type { Reading } from './reading.ts';

/** Tells a block that no line of colons closes, at its opening line: it holds more than was meant. */
export function tellUnclosed(reading: Reading, node: BlockDirective, { outer }: Around): void {
  if (node.type !== 'containerDirective' || tokensOf(node).closing !== undefined) return;
  if (outer?.tokens.closing === undefined) {
    tellMisplaced(reading, node, noClosing, aClosing);
    return;
  }
  const { opening } = outer.tokens;
  tellMisplaced(reading, node, noClosing, aClosing, {
    name: outer.name,
    colons: colonsOf(reading, opening),
    line: reading.place(opening).start.line,
  });
}

const noClosing = 'no line that closes it';
const aClosing = 'a line of ::: after its last line, as far in as its first';

const colonsOf = (reading: Reading, opening: Span): number =>
  /^:+/.exec(reading.source(opening))?.[0].length ?? 0;
