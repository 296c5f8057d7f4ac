import type { Place } from '../../../schemas/finding.ts';
import type { Item } from '../../../src/catalogue/index.ts';
import type { Precedence } from '../../../src/ledger/precedence.ts';
import { actionsIn, allBlocks, type LinkedProcedure } from '../../../src/link/index.ts';
import type { Step } from '../../../src/syntax/index.ts';
import { type Moving, movingActions } from '../moving-actions.ts';
import type { Operator, Subject } from '../operator.ts';
import { sourceWords } from '../source-words.ts';

/** Changes the order of two neighbouring steps whose items the catalogue orders, or that move the same item. */
export const swapSteps: Operator = {
  name: 'swap two ordered steps',
  *mutations(subject) {
    const { procedure } = subject.linked;
    const textAt = ({ start, end }: Place) => procedure.text.slice(start.offset, end.offset);
    for (const block of allBlocks(procedure)) {
      if (block.type !== 'steps') continue;
      for (const [i, second] of block.steps.entries()) {
        const first = block.steps[i - 1];
        if (first === undefined) continue;
        const pairs = orderedPairs(subject, first, second);
        if (pairs.length === 0) continue;
        const [a, b] = [first.place, second.place];
        yield {
          edits: [
            { start: a.start.offset, end: a.end.offset, text: textAt(b) },
            { start: b.start.offset, end: b.end.offset, text: textAt(a) },
          ],
          words: `${sourceWords(procedure, a)} ⇄ ${sourceWords(procedure, b)}`,
          about: { is: 'swap', pairs },
        };
      }
    }
  },
};

function orderedPairs(
  { linked, precedence }: Subject,
  first: Step,
  second: Step,
): (readonly [Moving, Moving])[] {
  const later = movedIn(linked, second);
  return movedIn(linked, first).flatMap((a) =>
    later.flatMap((b) =>
      standsInWay(precedence, a.item, b.item) || standsInWay(precedence, b.item, a.item)
        ? [[a, b] as const]
        : [],
    ),
  );
}

function movedIn(linked: LinkedProcedure, step: Step): readonly Moving[] {
  const actions = new Set(actionsIn(step.blocks));
  return [...movingActions(linked)].filter(({ action }) => actions.has(action));
}

function standsInWay(precedence: Precedence, a: Item, b: Item): boolean {
  const related: readonly Item[] = [
    a,
    ...precedence.holding(a),
    ...precedence.connectionsOn(a),
    ...precedence.inFrontOf(a),
    ...precedence.isolationFor(a),
    ...precedence.aidsBlocking(a),
    ...precedence.circuitsOpenedBy(a),
  ];
  return related.includes(b);
}
