import type { Edit, Fix, Json, Level, Place, Related } from '../../schemas/finding.ts';
import type { Catalogue, CatalogueFact, Item } from '../catalogue/index.ts';
import type { LedgerFact } from '../ledger/index.ts';
import type { LinkedManual, LinkedProcedure, LinkFact } from '../link/index.ts';
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

/** What is told by now, and of which rules there are. */
export interface Told {
  /** Ids of all rules that there are. */
  readonly ruleIds: readonly string[];
  /** Facts of some kinds, in order of place. */
  facts<K extends Fact['kind']>(...kinds: readonly K[]): readonly Extract<Fact, { kind: K }>[];
}

/** A procedure that is looked at. */
export interface Subject {
  readonly id: string;
  /** As the author wrote it. */
  readonly one: LinkedProcedure;
  /** With every `::reverse` written out. */
  readonly expanded: LinkedProcedure;
}

/**
 * All that a rule may look at. A manual is looked at in parts, each procedure, each machine and the settings by
 * itself: what a rule says of one procedure may depend on the catalogue and on what that procedure
 * performs, and on nothing else (`unless` is for the rest).
 */
export interface Examined extends Told {
  /** The procedures in this part. */
  readonly subjects: readonly Subject[];
  /** The machines in this part. */
  readonly machines: readonly Catalogue[];
  /** The entries in this part: those of the machines, and those in the front matter of the subjects. */
  readonly entries: readonly Item[];
  /** Whether the settings of the manual are in this part. */
  readonly hasSettings: boolean;
  /** To look things up in: the subjects and what they perform, as the author wrote it. */
  readonly linked: LinkedManual;
  /** The same with every `::reverse` written out; those steps stand at its place and have no text of their own. */
  readonly expanded: LinkedManual;
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
  /** Of the ledger's fact that it tells, as `factKey` gives it; procedures that perform the text are named with it. */
  readonly fact?: string | undefined;
  /** It is told only where no part of the manual settles any of these for its rule. */
  readonly unless?: readonly string[] | undefined;
  /** It is told only where some part of the manual settles this for its rule. */
  readonly onlyIf?: string | undefined;
}

export interface Rule {
  /** Kebab-case; the same as the names of its file and its page. */
  readonly id: string;
  readonly family: Family;
  readonly level: Level;
  check(examined: Examined): Iterable<Draft>;
  /** What this part of the manual settles for what the rule says of any part. */
  settles?(examined: Examined): Iterable<string>;
}

/** A rule that says what can only be known when every part has been looked at. */
export interface LateRule extends Omit<Rule, 'check' | 'settles'> {
  check(told: Told): Iterable<Draft>;
}
