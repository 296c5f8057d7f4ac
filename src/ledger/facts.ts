import type { Verb } from '../../schemas/directives.ts';
import type { Place } from '../../schemas/finding.ts';

/** How many pieces in which state: `[["out", 4], ["tight", 4]]`. */
export type Spread = readonly (readonly [state: string, count: number])[];

/** A place in the story of an item, with what happened there. */
export interface Trace {
  readonly place: Place;
  readonly verb: Verb | 'perform';
  readonly count: number;
  /** Of a performed procedure: what in it did this. */
  readonly inside?: Trace | undefined;
}

/** What is common to all facts of the ledger. All is plain data. */
interface Told {
  /** The procedure in whose text it stands. */
  readonly procedure: string;
  readonly place: Place;
  readonly item: string;
  /** The instances of the item, where it is not all of them: "left". */
  readonly instance?: string | undefined;
  /** Shortest condition of the variants it holds for; undefined for all. */
  readonly when: string | undefined;
  /** Set where a performed procedure meets a state it was not written for: the place inside it. */
  readonly inside?: { readonly procedure: string; readonly place: Place };
  /** Set where it is told at a `perform` at the end of the work: the place in the performed text that did it. */
  readonly origin?: Place | undefined;
  /** The procedures that perform the text it stands in, for which the same holds. */
  readonly performedBy?: readonly PerformedBy[];
}

export interface PerformedBy {
  readonly procedure: string;
  /** The `perform`. */
  readonly place: Place;
  readonly when: string | undefined;
}

export type LedgerFact = Told &
  (
    | {
        readonly kind: 'verb-unfit';
        readonly verb: Verb;
        readonly itemKind: string;
        readonly fitting: readonly Verb[];
      }
    /** The action finds every piece already where it would bring it. */
    | {
        readonly kind: 'already-done';
        readonly verb: Verb;
        readonly direction: 'out' | 'back' | 'within';
        readonly state: Spread;
        readonly since: Trace | undefined;
      }
    /** The action finds pieces in states that it cannot start from. */
    | {
        readonly kind: 'state-unfit';
        readonly verb: Verb;
        readonly state: Spread;
        readonly from: readonly string[];
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'too-many';
        readonly verb: Verb;
        readonly asked: number;
        readonly available: number;
        readonly size: number;
        readonly state: Spread;
        readonly since: Trace | undefined;
      }
    /** More pieces are loose or out than may be at a time. */
    | {
        readonly kind: 'too-many-undone';
        readonly verb: Verb;
        readonly undone: number;
        readonly most: number;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'old-back';
        readonly verb: Verb;
        readonly itemKind: string;
        readonly singleUse: boolean;
        readonly count: number;
        readonly since: Trace | undefined;
      }
    /** A new piece goes in, and nothing says what becomes of the old one. */
    | {
        readonly kind: 'old-unsaid';
        readonly verb: Verb;
        readonly itemKind: string;
        readonly count: number;
        readonly since: Trace | undefined;
      }
    /** At the end an item is not where it should be. */
    | {
        readonly kind: 'not-home';
        readonly itemKind: string;
        readonly state: Spread;
        readonly expected: Spread;
        readonly promised: boolean;
        readonly size: number;
        readonly hasTorque: boolean;
        readonly story: readonly Trace[];
        readonly closedOver: readonly Place[];
      }
    /** A part moves while something still keeps it. */
    | {
        readonly kind: 'still-held';
        readonly verb: Verb;
        readonly by: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'still-connected';
        readonly verb: Verb;
        readonly by: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'blocked';
        readonly verb: Verb;
        readonly direction: 'out' | 'back' | 'within';
        readonly by: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    /** A part goes in over something that is not back yet; `item` is the part, `over` what it closes in. */
    | {
        readonly kind: 'closed-over';
        readonly verb: Verb;
        readonly over: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'aid-in-way';
        readonly verb: Verb;
        readonly aid: string;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    /** A fastener or connection is made while the part it belongs to is not in. */
    | {
        readonly kind: 'nothing-there';
        readonly verb: Verb;
        readonly part: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'under-pressure';
        readonly verb: Verb;
        readonly circuit: string;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'energy-live';
        readonly verb: Verb;
        readonly energy: string;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'drain-shut';
        readonly points: readonly string[];
        readonly byPlace: Place;
      }
    | {
        readonly kind: 'fill-shut';
        readonly points: readonly string[];
        readonly byPlace: Place;
      }
    | {
        readonly kind: 'fill-open';
        readonly point: string;
        readonly state: Spread;
        readonly byPlace: Place;
        readonly since: Trace | undefined;
      }
    | {
        readonly kind: 'uncapped';
        readonly verb: Verb;
        readonly byPlace: Place;
        readonly connectedAt: Place | undefined;
      }
    /** `starts` of a performed procedure names a state that the machine is not in. */
    | {
        readonly kind: 'start-not-met';
        readonly callee: string;
        readonly state: Spread;
        readonly expected: Spread;
        readonly declared: Place;
        readonly since: Trace | undefined;
      }
    /** A state in `starts` or `leaves` that the item does not have, or an item that has no state. */
    | {
        readonly kind: 'contract-unfit';
        readonly member: 'starts' | 'leaves';
        readonly written: string;
        readonly known: readonly string[];
      }
    | {
        readonly kind: 'perform-cycle';
        readonly chain: readonly {
          readonly procedure: string;
          readonly place: Place;
        }[];
      }
    | {
        readonly kind: 'needs-later';
        readonly step: string;
        readonly needed: string;
        readonly neededPlace: Place;
      }
    | {
        readonly kind: 'needs-cycle';
        readonly chain: readonly {
          readonly step: string;
          readonly place: Place;
        }[];
      }
    /** An action on an item that the machine does not have in these variants. */
    | {
        readonly kind: 'item-absent';
        readonly verb: Verb;
        readonly itemWhen: string;
        readonly byPlace: Place;
      }
  );
