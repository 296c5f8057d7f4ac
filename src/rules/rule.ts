import type { Edit, Fix, Json, Level, Place, Related } from '../../schemas/finding.ts';
import type { CatalogueFact } from '../catalogue/index.ts';
import type { LedgerFact } from '../ledger/index.ts';
import type { LinkedManual, LinkFact } from '../link/index.ts';
import type { ReverseFact } from '../reverse/index.ts';
import type { SourceFact } from '../source/index.ts';
import type { SyntaxFact } from '../syntax/index.ts';
import type { WaiverFact } from './waiving/facts.ts';

export type Family = 'form' | 'links' | 'balance' | 'order' | 'values' | 'safety' | 'words';

/** What the rooms before have found, as plain data; a rule turns its kinds into words. */
export type Fact =
  | SourceFact
  | CatalogueFact
  | SyntaxFact
  | LinkFact
  | LedgerFact
  | ReverseFact
  | WaiverFact;

/** All that a rule may look at. */
export interface Examined {
  /** As the author wrote it. */
  readonly linked: LinkedManual;
  /** The same with every `::reverse` written out; those steps stand at its place and have no text of their own. */
  readonly expanded: LinkedManual;
  /** Ids of all rules that there are. */
  readonly ruleIds: readonly string[];
  /** Facts of some kinds, in order of place. */
  facts<K extends Fact['kind']>(...kinds: readonly K[]): readonly Extract<Fact, { kind: K }>[];
  /** The edits that write in what is missing to bring an item home; undefined where no steps can. */
  completion(procedure: string, item: string): readonly Edit[] | undefined;
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
