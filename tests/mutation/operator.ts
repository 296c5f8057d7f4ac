import type { Precedence } from '../../src/ledger/precedence.ts';
import type { LinkedManual, LinkedProcedure } from '../../src/link/index.ts';
import type { Action, HazardPanel } from '../../src/syntax/index.ts';
import type { Edit } from './edit.ts';
import type { Moving } from './moving-actions.ts';

/** A procedure to make mutants of. */
export interface Subject {
  readonly manual: LinkedManual;
  readonly linked: LinkedProcedure;
  readonly precedence: Precedence;
}

/** One fault put into a procedure. */
export interface Mutation {
  readonly edits: readonly Edit[];
  /** The author's words at the place, and what became of them. */
  readonly words: string;
  /** What it is about, so that a survivor can be explained. */
  readonly about: About;
}

export type About =
  | ({ readonly is: 'action' } & Moving)
  | { readonly is: 'perform'; readonly procedure: string }
  | { readonly is: 'reverse' }
  /** Every pair of actions that the catalogue orders, one of either step. */
  | { readonly is: 'swap'; readonly pairs: readonly (readonly [Moving, Moving])[] }
  | { readonly is: 'panel'; readonly panel: HazardPanel }
  | { readonly is: 'value'; readonly action: Action | undefined };

/** A kind of fault that writers make, at every place where it can be made. */
export interface Operator {
  /** The row of the table. */
  readonly name: string;
  mutations(subject: Subject): Iterable<Mutation>;
}
