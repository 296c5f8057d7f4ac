import { reusableShare, torqueFor } from './preload.ts';
import { nutFactor, type ThreadCondition } from './preload-friction.ts';
import { middling, strongest } from './property-class.ts';
import { proofStress, type Strength } from './strength.ts';
import { nominalDiameter, stressArea } from './thread-area.ts';
import type { Thread } from './thread-model.ts';

/** What is known of a screwed joint. */
export interface Joint {
  readonly thread: Thread;
  /** Undefined where neither class nor grade says it. */
  readonly strength: Strength | undefined;
  readonly threads: ThreadCondition | undefined;
}

/** The torques that a joint stands, with the working. Torques in N·m. */
export interface TorqueBand {
  /** mm² */
  readonly area: number;
  /** mm */
  readonly diameter: number;
  /** MPa: that of the class or grade, or of class 12.9 where nothing is said. */
  readonly proofStress: number;
  /** N */
  readonly proofLoad: number;
  readonly nutFactor: number;
  /** Brings the bolt to its full proof load: more is implausible. */
  readonly full: number;
  /**
   * 75 % of the proof load for a joint that is taken apart again (common practice), from about a sixth of it to nearly
   * all of it (our own bounds). Where the strength is not said, that of class 8.8.
   */
  readonly usual: { readonly low: number; readonly middle: number; readonly high: number };
  /** Leaves the bolt all but loose. Undefined where strength is not said: then nothing is too little. */
  readonly least: number | undefined;
}

/** T = K·d·F at shares of the proof load F = stress area × proof stress. */
export function torqueBand({ thread, strength, threads }: Joint): TorqueBand {
  const area = stressArea(thread);
  const diameter = nominalDiameter(thread);
  const stress = proofStress(strength ?? strongest, diameter);
  const factor = nutFactor(threads, strength?.isStainless ?? false);
  const at = (share: number, mpa = stress): number =>
    torqueFor(factor, diameter, share * area * mpa);
  const common = strength === undefined ? middlingStress : stress;
  return {
    area,
    diameter,
    proofStress: stress,
    proofLoad: area * stress,
    nutFactor: factor,
    full: at(1),
    usual: {
      low: at(lowestUsual, common),
      middle: at(reusableShare, common),
      high: at(highestUsual, common),
    },
    least: strength === undefined ? undefined : at(leastShare),
  };
}

/** MPa: the lower stress of the class, at whatever diameter. */
const middlingStress = proofStress(middling, 0);
/**
 * Our own bounds, of no standard: between them lies what a slip is thought to have been meant as. The lower one is
 * twice the least below, for soft joints are tightened far under 75 %; the upper one keeps off the full proof load.
 */
const lowestUsual = 0.16;
const highestUsual = 0.95;
/**
 * Our own bound, of no standard: a twelfth of the usual 0.75 (lbf·in for lbf·ft), a tenth (a decimal point) and 1/9.8 (kgf·m) lie below
 * it; torques for soft joints, gaskets and plugs lie above it.
 */
const leastShare = 0.08;
