import { precedenceOf } from '../../src/ledger/precedence.ts';
import type { LinkedManual } from '../../src/link/index.ts';
import { edited } from './edit.ts';
import type { Mutation, Operator } from './operator.ts';

/** A mutation of one procedure of a manual. */
export interface Mutant extends Mutation {
  readonly operator: string;
  readonly procedure: string;
  readonly file: string;
  /** The whole text of the file, with the fault in it. */
  readonly text: string;
}

export function* mutantsOf(
  linked: LinkedManual,
  operators: readonly Operator[],
): Generator<Mutant> {
  for (const [id, one] of linked.procedures) {
    const { file, text } = one.procedure;
    const subject = { manual: linked, linked: one, precedence: precedenceOf(one.catalogue) };
    for (const operator of operators) {
      for (const mutation of operator.mutations(subject)) {
        const { name } = operator;
        yield {
          ...mutation,
          operator: name,
          procedure: id,
          file,
          text: edited(text, mutation.edits),
        };
      }
    }
  }
}
