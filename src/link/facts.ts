import type { Place } from '../../schemas/finding.ts';

/** What joining procedures, catalogue and figures can find. `procedure` is the id of the procedure it stands in. */
export type LinkFact = { readonly procedure: string; readonly place: Place } & (
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
        | 'instance';
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
    }
  | { readonly kind: 'link-outside'; readonly url: string }
  | { readonly kind: 'figure-missing'; readonly path: string; readonly near?: string }
  | { readonly kind: 'figure-unfit'; readonly path: string }
  | { readonly kind: 'alternative-missing'; readonly path: string }
);
