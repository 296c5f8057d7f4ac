import type { Place } from '../../schemas/finding.ts';
import type { ConditionProblem, SpaceProblem } from '../applicability/index.ts';
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
  /** Shares of a mix that are more than the whole. */
  | { readonly kind: 'mix-over'; readonly place: Place; readonly percent: number }
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
