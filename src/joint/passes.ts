import type { Pattern } from '../../schemas/catalogue.ts';
import type { Torque, TorqueSpec } from '../quantity/index.ts';

/**
 * The torque of a last pass once round the circle, until no bolt turns (ASME PCC-1, legacy cross-pattern): tightening
 * one bolt lets its neighbours go a little. None where the pattern is no circle of four or more, and none where the
 * joint is tightened by an angle, which must not be turned further.
 */
export function lastRound(pattern: Pattern, { stages }: TorqueSpec): Torque | undefined {
  const last = stages.at(-1);
  const isTurned = stages.some(({ does }) => does === 'turn' || does === 'tighten-and-turn');
  if (!('circle' in pattern) || pattern.circle < 4 || isTurned) return undefined;
  return last?.does === 'tighten' ? last.to : undefined;
}
