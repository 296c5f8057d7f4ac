import type { ManualSettings } from '../../../schemas/manual.ts';
import type { Outline } from '../../link/index.ts';
import type { Look } from '../../rules/index.ts';

/** What is kept of one check for the next. Plain data; every part stands under a digest of all on which it depends. */
export interface Store {
  readonly settings: Readonly<Record<string, Settings>>;
  /** Null for a file that is no procedure. */
  readonly outlines: Readonly<Record<string, Outline | null>>;
  readonly looks: Readonly<Record<string, Look>>;
}

/** Of manual.yaml, what the report needs. */
export interface Settings {
  readonly title: string;
  readonly levels: ManualSettings['rules'];
}

export const emptyStore: Store = { settings: {}, outlines: {}, looks: {} };
