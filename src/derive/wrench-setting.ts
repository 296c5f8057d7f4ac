import type { Tool, Torque } from '../catalogue/index.ts';
import { wrenchSetting } from '../joint/index.ts';
import { type LinkedProcedure, wrenchOf } from '../link/index.ts';
import { piecesByPolicy, type QuantityPieces, type UnitPolicy } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';

/** A torque wrench that shows less or more than the torque at the bolt, since it has an extension. */
export interface WrenchFact {
  readonly extension: Tool;
  /** In degrees: 0 where the extension is in line with the wrench. */
  readonly angle: number;
  /** Setting of the wrench over the torque at the bolt. */
  readonly share: number;
}

export function wrenchFact(action: Action, one: LinkedProcedure): WrenchFact | undefined {
  const { value } = wrenchOf(action, one);
  if (value === undefined) return undefined;
  const { angle, share } = value;
  const extension = one.item(value.extension);
  return extension?.kind === 'tool' ? { extension, angle, share } : undefined;
}

/** What to set the wrench to, one for each stage that has a torque, in the manual's units. */
export function wrenchSettings(
  { spec }: Torque,
  { share }: WrenchFact,
  policy: UnitPolicy,
): readonly QuantityPieces[] {
  return spec.stages.flatMap((stage) =>
    stage.does === 'tighten' || stage.does === 'tighten-and-turn'
      ? [piecesByPolicy(wrenchSetting(stage.to, share), policy)]
      : [],
  );
}
