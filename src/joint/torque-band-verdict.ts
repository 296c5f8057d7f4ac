import { canonical, type Torque, type TorqueSpec } from '../quantity/index.ts';
import type { TorqueBand } from './torque-band.ts';

/** A torque that a joint will not stand, or that does not hold it. */
export interface Implausible {
  readonly is: 'too-high' | 'too-low';
  /** The stage at fault, counted from 0. */
  readonly stage: number;
  readonly torque: Torque;
  /** Share of the proof load that it gives by T = K·d·F. */
  readonly share: number;
}

/**
 * The stage that overloads the bolt most, or the highest where all of them leave it all but loose. A tightening with
 * a turn, forwards or back, is never too low: the turn does the rest, or the joint is meant to run free.
 */
export function implausibleStage(spec: TorqueSpec, band: TorqueBand): Implausible | undefined {
  const stages = spec.stages.flatMap((stage, i) => {
    if (stage.does !== 'tighten' && stage.does !== 'tighten-and-turn') return [];
    const newtonMetres = largest(stage.to);
    if (newtonMetres === undefined) return [];
    return [{ stage: i, torque: stage.to, share: newtonMetres / band.full }];
  });
  const most = stages.toSorted((a, b) => b.share - a.share || a.stage - b.stage)[0];
  if (most === undefined) return undefined;
  if (most.share > 1 + slack) return { ...most, is: 'too-high' };
  const isPlain = spec.stages.every(({ does }) => does === 'tighten');
  const isLow = band.least !== undefined && most.share * band.full < band.least;
  return isPlain && isLow && isBoundedAbove(most.torque) ? { ...most, is: 'too-low' } : undefined;
}

/** For binary error alone. */
const slack = 1e-9;

/** The upper end in N·m; the lower one of `min 60 N·m`. */
function largest(torque: Torque): number | undefined {
  const { low, high } = canonical(torque);
  return (high ?? low)?.value;
}

const isBoundedAbove = (torque: Torque): boolean =>
  torque.form !== 'limit' || torque.limit === 'max';
