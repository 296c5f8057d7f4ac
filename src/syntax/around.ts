import type { DirectiveTokens, Span } from './directive-tokens.ts';

/** What the blocks that are being read stand in. */
export interface Around {
  /** Items with a `:torque` of their own in the step, or a block that stands for it; undefined outside steps. */
  readonly torqued: Set<string> | undefined;
  /** The block that they are the body of. */
  readonly outer: { readonly name: string; readonly tokens: DirectiveTokens } | undefined;
  /** The innermost step, else the section; undefined for the whole file. */
  readonly scope: Span | undefined;
}

export const nowhere: Around = { torqued: undefined, outer: undefined, scope: undefined };
