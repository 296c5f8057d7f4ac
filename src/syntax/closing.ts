import type { Around } from './around.ts';
import { tokensOf } from './directive-tokens.ts';
import type { BlockDirective } from './label.ts';
import { tellMisplaced } from './misplaced.ts';
import type { Reading } from './reading.ts';

/** Tells a block that no line of colons closes, at its opening line: it holds more than was meant. */
export function tellUnclosed(reading: Reading, node: BlockDirective, { outer }: Around): void {
  if (node.type !== 'containerDirective' || tokensOf(node).closing !== undefined) return;
  if (outer?.tokens.closing === undefined) {
    tellMisplaced(
      reading,
      node,
      'no line that closes it',
      'a line of ::: after its last line, as far in as its first',
    );
    return;
  }
  const { line } = reading.place(outer.tokens.opening).start;
  tellMisplaced(
    reading,
    node,
    `no line that closes it: the next one closes the ${outer.name} of line ${line}`,
    `a line of ::: that closes the ${outer.name} before this one, or more colons on the ${outer.name} than on the blocks inside it`,
  );
}
