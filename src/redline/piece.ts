import type { Place } from '../../schemas/finding.ts';
import type { Condition } from '../applicability/index.ts';
import type { Action, FigureBlock, HazardPanel, Perform, Reverse, Step } from '../syntax/index.ts';

/** Under what something is done: for which machines, and on which way through what the technician finds. */
export interface Under {
  readonly when: readonly Condition[];
  /** `if the belt is cracked`, `repeated until no more bubbles come`. */
  readonly ways: readonly string[];
}

/** Something in a piece, with what it stands under inside of it. */
export interface Inside<T> {
  readonly of: T;
  readonly under: Under;
}

/**
 * What a sheet tells under one number, without the numbered steps inside of it; or what stands beside the steps of a
 * section.
 */
export interface Piece {
  readonly kind: 'step' | 'beside';
  /** Undefined beside the steps. */
  readonly step: Step | undefined;
  readonly number: string | undefined;
  readonly section: { readonly id: string; readonly title: string | undefined };
  readonly under: Under;
  readonly place: Place;
  /** Of each paragraph, in order of reading. */
  readonly words: string[];
  readonly actions: Inside<Action>[];
  readonly hazards: Inside<HazardPanel>[];
  readonly performs: Inside<Perform>[];
  readonly reverses: Inside<Reverse>[];
  /** Items whose values are printed large, with boxes to record what was done: `torque anvil-bolt`. */
  readonly boxes: string[];
  readonly figures: FigureBlock[];
  /** Ids of steps that must be done before. */
  readonly needs: string[];
}
