import { uncheckedLeaks } from '../reading/leak-checks.ts';
import type { Draft, Rule } from '../rule.ts';
import { related, without } from '../telling/related.ts';
import { declared } from '../telling/trace.ts';
import { code } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'leak-unchecked',
  family: 'safety',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { procedure, circuit, opened, ready } of uncheckedLeaks(examined)) {
      const name = the(thing(circuit.id, circuit));
      yield {
        place: ready.place,
        procedure: procedure.procedure.id,
        item: circuit.id,
        message: `The circuit of ${name} was open, and nothing checks it for leaks after this`,
        data: { circuit: circuit.id, opened: opened.action.verb, by: opened.item.id },
        related: without(ready.place, [
          related(opened.place, 'opened here'),
          declared(circuit.placeOf('leak-check'), 'the leak check'),
        ]),
        help: `Add ${code(`:check[Look for leaks]{item=${circuit.id}}`)} once the circuit is full and, where it has pressure only then, the machine has run.`,
      };
    }
  },
};
