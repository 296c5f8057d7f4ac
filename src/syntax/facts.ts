import type { Place } from '../../schemas/finding.ts';

/** What reading a procedure's Markdown can find. */
export type SyntaxFact =
  | { readonly kind: 'front-matter-missing'; readonly place: Place }
  | {
      readonly kind: 'directive-unknown';
      readonly place: Place;
      readonly name: string;
      readonly form: 'text' | 'leaf' | 'block';
      readonly near?: string;
    }
  | {
      /**
       * A known directive where it cannot stand, with the wrong number of colons, or not closed; `name` is `:::`
       * for a closing line that closes nothing.
       */
      readonly kind: 'directive-misplaced';
      readonly place: Place;
      readonly name: string;
      readonly found: string;
      readonly expected: string;
      /** The block around one that is not closed, and which the next line of colons closes in its place. */
      readonly outer?: { readonly name: string; readonly colons: number; readonly line: number };
    }
  | {
      /** `attribute` is `[…]` for the words in square brackets, `{…}` for braces that could not be read. */
      readonly kind: 'attribute-wrong';
      readonly place: Place;
      readonly directive: string;
      readonly attribute: string;
      readonly found?: string;
      readonly expected: string;
      readonly near?: string;
    }
  | {
      /** The name of a directive, right or nearly, before its brackets and braces and with no colon before it. */
      readonly kind: 'colon-missing';
      readonly place: Place;
      readonly name: string;
      /** How it is written, with its colons; undefined where no name is near. */
      readonly near?: string;
    }
  | { readonly kind: 'raw-html'; readonly place: Place; readonly html: string }
  | {
      /** Nested deeper than a sheet can show; nothing of the file was read. */
      readonly kind: 'too-deep';
      readonly place: Place;
      readonly depth: number;
    }
  | {
      /** Beyond what a procedure may measure; nothing of the file was read. `what` is such as `lines in the file`. */
      readonly kind: 'too-large';
      readonly place: Place;
      readonly what: string;
      readonly found: number;
      readonly limit: number;
    }
  | {
      readonly kind: 'section-twice';
      readonly place: Place;
      readonly first: Place;
      readonly id: string;
    };
