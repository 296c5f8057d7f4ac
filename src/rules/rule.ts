import type { Fix, Json, Level, Place, Related } from '../../schemas/finding.ts';
import type { CatalogueFact } from '../catalogue/index.ts';
import type { LedgerFact } from '../ledger/index.ts';
import type { LinkedManual, LinkFact } from '../link/index.ts';
import type { SourceFact } from '../source/index.ts';
import type { SyntaxFact } from '../syntax/index.ts';

export type Family = 'form' | 'links' | 'balance' | 'order' | 'values' | 'safety' | 'words';

/** What the rooms before have found, as plain data; a rule turns its kinds into words. */
export type Fact = SourceFact | CatalogueFact | SyntaxFact | LinkFact | LedgerFact;

/** All that a rule may look at. */
export interface Examined {
  readonly linked: LinkedManual;
  /** Facts of some kinds, in order of place. */
  facts<K extends Fact['kind']>(...kinds: readonly K[]): readonly Extract<Fact, { kind: K }>[];
  /** Text of a file of the manual; empty when there is none. */
  text(file: string): string;
}

/** A finding before its rule, level and procedure are put to it. */
export interface Draft {
  readonly place: Place;
  readonly message: string;
  readonly procedure?: string | undefined;
  readonly item?: string | undefined;
  readonly when?: string | undefined;
  readonly data?: Readonly<Record<string, Json>>;
  readonly related?: readonly Related[];
  readonly help?: string | undefined;
  readonly fix?: Fix | undefined;
}

export interface Rule {
  /** Kebab-case; the same as the names of its file and its page. */
  readonly id: string;
  readonly family: Family;
  readonly level: Level;
  check(examined: Examined): Iterable<Draft>;
}
