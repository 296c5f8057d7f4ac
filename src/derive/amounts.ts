import type { Torque } from '../catalogue/index.ts';
import {
  type Angle,
  parseQuantity,
  piecesByPolicy,
  printAsWritten,
  printByPolicy,
  type QuantityPieces,
  type TorqueStage,
  type UnitPolicy,
} from '../quantity/index.ts';

/** A value of the text in the manual's units; as written where it cannot be read. */
export function writtenText(written: string, policy: UnitPolicy): string {
  const { value } = parseQuantity(written);
  return value === undefined ? written : printByPolicy(value, policy);
}

/** One text a stage of a torque: "95 N·m (70 lbf·ft)", "back off 1/4 turn". */
export function stageTexts(torque: Pick<Torque, 'spec'>, policy: UnitPolicy): readonly string[] {
  return stagePieces(torque, policy).map(({ first, second }) =>
    second === undefined ? first : `${first} (${second})`,
  );
}

/** The stages of a torque, first unit and second unit apart. */
export function stagePieces(
  torque: Pick<Torque, 'spec'>,
  policy: UnitPolicy,
): readonly QuantityPieces[] {
  return torque.spec.stages.map((stage) => pieces(stage, policy));
}

function pieces(stage: TorqueStage, policy: UnitPolicy): QuantityPieces {
  switch (stage.does) {
    case 'tighten':
      return piecesByPolicy(stage.to, policy);
    case 'tighten-and-turn':
      return piecesByPolicy({ form: 'torque-angle', torque: stage.to, angle: stage.by }, policy);
    case 'turn':
      return { first: `turn on ${angleText(stage.by)}` };
    case 'back-off':
      return { first: `back off ${angleText(stage.by)}` };
  }
}

const angleText = (angle: Angle): string => printAsWritten(angle);
