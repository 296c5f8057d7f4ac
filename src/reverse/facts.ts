import type { Verb } from '../../schemas/directives.ts';
import type { Place } from '../../schemas/finding.ts';

/** What writing out a `::reverse` can find. */
export type ReverseFact = {
  readonly procedure: string;
  readonly place: Place;
} /** The section stands after the `::reverse`, or holds it. */ & (
  | { readonly kind: 'reverse-of-later'; readonly section: string; readonly sectionPlace: Place }
  /** Nothing of the section is left to undo. */
  | { readonly kind: 'reverse-empty'; readonly section: string; readonly sectionPlace: Place }
  /** A step of the author's waits for the return of an item that the section does not bring back. */
  | {
      readonly kind: 'reverse-at-unused';
      readonly section: string;
      readonly sectionPlace: Place;
      readonly item: string;
    }
  /** Something was done that no step can undo; the author must say what takes its place. */
  | {
      readonly kind: 'reverse-asks';
      readonly section: string;
      readonly verb: Verb;
      readonly item: string;
      readonly done: Place;
    }
);
