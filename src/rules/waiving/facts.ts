import type { Place } from '../../../schemas/finding.ts';

/** What is wrong with a waiver; whether it is unused or expired is told after all else has been found. */
export type WaiverFact = {
  readonly procedure: string;
  readonly place: Place;
  readonly rule: string;
} & (
  | { readonly kind: 'waiver-without-reason' }
  /** There is no such rule, or none whose findings may be let pass. */
  | { readonly kind: 'waiver-of-no-rule' }
  /** `comeBack` counts the findings that it would let pass if it still held. */
  | {
      readonly kind: 'waiver-expired';
      readonly until: string;
      readonly today: string;
      readonly comeBack: number;
    }
  | {
      readonly kind: 'waiver-unused';
      readonly item: string | undefined;
      /** The manual turns the rule off. */
      readonly isOff: boolean;
      /** False where the waiver names an item that there is not; `near` is one like it. */
      readonly isKnown: boolean;
      readonly near?: string;
    }
);
