import type { Finding } from '../../schemas/finding.ts';
import type { Performing } from '../ledger/index.ts';
import type { Standing } from './waiving/standing.ts';

/** A finding, and what of the rest of the manual it depends on. */
export interface Found {
  readonly finding: Finding;
  /** As in a `Draft`; the keys have the rule before them. */
  readonly fact?: string;
  readonly unless?: readonly string[];
  readonly onlyIf?: string;
}

/**
 * What a look at one part of a manual gives: a procedure, or the catalogues. Plain data, so that it can be kept and
 * handed on; `conclude` makes one answer of all parts.
 */
export interface Look {
  readonly found: readonly Found[];
  /** What this part settles for findings of any part, each once. */
  readonly settled: readonly string[];
  readonly performing: readonly Performing[];
  readonly waivers: readonly Standing[];
  /** How much is in this part, with every `::reverse` written out. */
  readonly size: Size;
}

export interface Size {
  readonly procedures: number;
  readonly steps: number;
  readonly actions: number;
}
