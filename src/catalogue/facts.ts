import type { Place } from '../../schemas/finding.ts';
import type { ConditionProblem, SpaceProblem } from '../applicability/index.ts';
import type { StrengthProblem, ThreadProblem } from '../joint/index.ts';
import type { PolicyProblem, QuantityProblem, UnitKind } from '../quantity/index.ts';

/** What reading and linking the catalogue can find. */
export type CatalogueFact =
  | {
      readonly kind: 'duplicate-id';
      readonly id: string;
      readonly place: Place;
      readonly first: Place;
      readonly what: string;
    }
  | {
      readonly kind: 'unknown-item';
      readonly id: string;
      readonly place: Place;
      readonly near?: string;
      readonly machine: string;
    }
  | {
      /** A reference to an item of a kind that does not fit the member, such as `holds: coolant`. */
      readonly kind: 'item-wrong-kind';
      readonly id: string;
      readonly place: Place;
      readonly found: string;
      readonly expected: readonly string[];
      readonly member: string;
    }
  /** The place is that of the problem within what is written, where it can be told. */
  | {
      readonly kind: 'quantity-wrong';
      readonly place: Place;
      readonly written: string;
      readonly problem: QuantityProblem;
    }
  | {
      readonly kind: 'unit-wrong-kind';
      readonly place: Place;
      readonly written: string;
      readonly found: UnitKind;
      readonly expected: UnitKind;
      readonly what: string;
    }
  | {
      readonly kind: 'condition-wrong';
      readonly place: Place;
      readonly written: string;
      readonly problem: ConditionProblem;
    }
  | { readonly kind: 'variants-wrong'; readonly place: Place; readonly problem: SpaceProblem }
  | { readonly kind: 'units-wrong'; readonly place: Place; readonly problem: PolicyProblem }
  /** A metric or inch thread that the standard does not have. */
  | {
      readonly kind: 'thread-unknown';
      readonly place: Place;
      readonly written: string;
      readonly item: string | undefined;
      readonly problem: ThreadProblem;
    }
  /** A property class or grade that no standard has. */
  | {
      readonly kind: 'class-unknown';
      readonly place: Place;
      readonly written: string;
      readonly item: string | undefined;
      readonly problem: StrengthProblem;
    }
  /** Shares of a mix that are more than the whole. */
  | { readonly kind: 'mix-over'; readonly place: Place; readonly percent: number }
  /** A circuit that holds nothing. */
  | { readonly kind: 'capacity-zero'; readonly place: Place }
  /** A `base` whose share of the mix cannot be told. */
  | { readonly kind: 'base-unfit'; readonly place: Place; readonly base: string }
  /** A size that is not one amount above zero, or sizes of a fluid that the mix does not have. */
  | {
      readonly kind: 'container-wrong';
      readonly place: Place;
      readonly written: string;
      readonly problem: 'no-size' | 'not-in-mix';
      readonly known: readonly string[];
      readonly near?: string;
    }
  | {
      readonly kind: 'verb-unknown';
      readonly place: Place;
      readonly verb: string;
      readonly near?: string;
    }
  | {
      readonly kind: 'control-home-unknown';
      readonly place: Place;
      readonly home: string;
      readonly positions: readonly string[];
    }
  | {
      readonly kind: 'pattern-count';
      readonly place: Place;
      readonly positions: number;
      readonly count: number;
    }
  /** Two positions of a pattern, counted from 1, that are one place. */
  | {
      readonly kind: 'pattern-overlap';
      readonly place: Place;
      readonly first: number;
      readonly second: number;
    }
  /** The length of a torque wrench or of its extension that is not one figure above zero. */
  | {
      readonly kind: 'tool-length-wrong';
      readonly place: Place;
      readonly written: string;
      readonly member: 'length' | 'extension';
      readonly item: string;
    }
  | {
      readonly kind: 'precedence-cycle';
      readonly place: Place;
      readonly chain: readonly { readonly item: string; readonly place: Place }[];
    }
  | {
      readonly kind: 'machine-name-differs';
      readonly place: Place;
      readonly id: string;
      readonly file: string;
    };
