import type { Place } from '../../schemas/finding.ts';
import type { PictureFile } from '../source/index.ts';

/** What is wrong with a link or a picture; `procedure` is undefined for a picture that an entry of the catalogue names. */
export type PictureFact = { readonly procedure?: string; readonly place: Place } & (
  | { readonly kind: 'link-outside'; readonly url: string }
  | { readonly kind: 'figure-missing'; readonly path: string; readonly near?: string }
  | { readonly kind: 'figure-unfit'; readonly path: string }
  | { readonly kind: 'figure-sizeless'; readonly path: string }
  | {
      readonly kind: 'figure-not-shown';
      readonly path: string;
      readonly picture: Exclude<PictureFile, { state: 'fit' }>;
    }
);

/** What joining procedures, catalogue and figures can find. */
export type LinkFact = PictureFact | ProcedureFact;

/** `procedure` is the id of the procedure it stands in. */
type ProcedureFact = { readonly procedure: string; readonly place: Place } & (
  | {
      readonly kind: 'unknown-reference';
      readonly what:
        | 'item'
        | 'procedure'
        | 'machine'
        | 'section'
        | 'step'
        | 'state'
        | 'position'
        | 'instance'
        | 'limit'
        | 'revision';
      readonly id: string;
      readonly owner: string;
      readonly near?: string;
      readonly known: readonly string[];
    }
  | {
      readonly kind: 'reference-unfit';
      readonly item: string;
      readonly itemKind: string;
      readonly expected: readonly string[];
      readonly member: string;
    }
  | { readonly kind: 'duplicate-procedure'; readonly id: string; readonly first: Place }
  | { readonly kind: 'duplicate-step'; readonly id: string; readonly first: Place }
  | { readonly kind: 'machine-unsaid'; readonly machines: readonly string[] }
  | {
      readonly kind: 'position-missing';
      readonly item: string;
      readonly positions: readonly string[];
    }
  | {
      readonly kind: 'link-broken';
      readonly url: string;
      readonly target: string;
      readonly near?: string;
      /** Sections and steps that the file has, where the link names one that it has not. */
      readonly known?: readonly string[];
    }
  | { readonly kind: 'callout-twice'; readonly item: string; readonly first: Place }
  | { readonly kind: 'alternative-missing'; readonly path: string }
);
