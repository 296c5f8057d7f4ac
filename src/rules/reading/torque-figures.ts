import type { Torque } from '../../catalogue/index.ts';
import {
  findQuantities,
  kindOf,
  type Quantity,
  sameQuantity,
  type TorqueStage,
} from '../../quantity/index.ts';

/** A torque that is written in words, at its offsets. */
export interface TorqueFigure {
  readonly quantity: Quantity;
  readonly start: number;
  readonly end: number;
}

/** The torques in a text. */
export function torquesIn(text: string): TorqueFigure[] {
  return findQuantities(text).flatMap(({ quantity, start, end }) =>
    quantity !== undefined && kindOf(quantity) === 'torque' ? [{ quantity, start, end }] : [],
  );
}

/** The figures that a torque of the catalogue has, one or two a stage. */
export function figuresOf({ spec }: Torque): Quantity[] {
  return spec.stages.flatMap(figuresOfStage);
}

function figuresOfStage(stage: TorqueStage): Quantity[] {
  switch (stage.does) {
    case 'tighten':
      return [stage.to];
    case 'tighten-and-turn':
      return [stage.to, { form: 'torque-angle', torque: stage.to, angle: stage.by }];
    case 'turn':
    case 'back-off':
      return [stage.by];
  }
}

/** Whether a written figure is one of those that the catalogue has. */
export function agrees(figure: Quantity, torque: Torque): boolean {
  return figuresOf(torque).some((known) => sameQuantity(figure, known));
}
