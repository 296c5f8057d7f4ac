import type { Place } from '../../../schemas/finding.ts';
import type { Connection, Fastener, Torque } from '../../catalogue/index.ts';
import { canonical, type TorqueStage, type Torque as TorqueValue } from '../../quantity/index.ts';
import type { Examined } from '../rule.ts';
import { stagePlace } from './judged-torques.ts';

/** A stage, counted from 0, to a lower torque than the one straight before it. */
export interface FallingStage {
  readonly torque: Torque;
  readonly stage: number;
  readonly place: Place;
  readonly before: Place;
  readonly item: Fastener | Connection;
}

/** Of the torques in catalogues and front matter. A turn either way leaves the torque open. */
export function fallingStages({ entries }: Examined): readonly FallingStage[] {
  return entries.flatMap((item) => {
    if (item.kind !== 'fastener' && item.kind !== 'connection') return [];
    const { torque } = item;
    // A default torque of the manual has one stage.
    if (torque === undefined || torque.byDefault) return [];
    return torque.spec.stages.flatMap((stage, i, stages) => {
      const before = stages[i - 1];
      if (before === undefined || !falls(before, stage)) return [];
      const at = (n: number) => stagePlace(torque, n, item.placeOf);
      return [{ item, torque, stage: i, place: at(i), before: at(i - 1) }];
    });
  });
}

function falls(before: TorqueStage, stage: TorqueStage): boolean {
  if (before.does !== 'tighten') return false;
  if (stage.does !== 'tighten' && stage.does !== 'tighten-and-turn') return false;
  return isBelow(stage.to, before.to);
}

/** Below by more than rounding to another unit can make it. */
function isBelow(one: TorqueValue, other: TorqueValue): boolean {
  const { high } = canonical(one);
  const { low } = canonical(other);
  if (high === undefined || low === undefined) return false;
  return low.value - high.value > (one.unit === other.unit ? 0 : Math.max(low.step, high.step) / 2);
}
