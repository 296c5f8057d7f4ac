import type { Torque } from '../catalogue/index.ts';
import { mainUnit, printAsWritten, type Quantity, type TorqueStage } from '../quantity/index.ts';
import { compareQuantities, middleShift } from './compare-quantities.ts';
import { type Shift, sides } from './fact.ts';

/** How a tightening changed: its figures, stages, angles, tolerance, threads; a unit alone is no other torque. */
export function torqueShifts(
  before: Torque | undefined,
  after: Torque | undefined,
): readonly Shift[] {
  if (before === undefined || after === undefined) {
    if (before === after) return [];
    return [{ kind: 'torque', ...sides(before && torqueText(before), after && torqueText(after)) }];
  }
  const whole = { before: torqueText(before), after: torqueText(after) };
  return [
    ...figureShifts(before.spec.stages, after.spec.stages).map((shift) => ({ ...shift, ...whole })),
    ...threadShifts(before, after),
  ];
}

/** A tightening in its author's units: "20 N·m, then 60 N·m + 90°". */
export function torqueText({ spec }: Pick<Torque, 'spec'>): string {
  return spec.stages.map(stageText).join(', then ');
}

function stageText(stage: TorqueStage): string {
  switch (stage.does) {
    case 'tighten':
      return printAsWritten(stage.to);
    case 'tighten-and-turn':
      return `${printAsWritten(stage.to)} + ${printAsWritten(stage.by)}`;
    case 'turn':
      return `turn on ${printAsWritten(stage.by)}`;
    case 'back-off':
      return `back off ${printAsWritten(stage.by)}`;
  }
}

type Stages = readonly TorqueStage[];

/** At most one of each kind: the last stage that differs says how, since it is what holds the joint. */
function figureShifts(before: Stages, after: Stages): readonly Shift[] {
  const shifts: Shift[] = [];
  const sameShape =
    before.length === after.length && before.every((stage, i) => stage.does === after[i]?.does);
  if (!sameShape) {
    const direction =
      before.length === after.length
        ? {}
        : towards(before.length > after.length ? 'lower' : 'higher');
    shifts.push({ kind: 'torque-stages', ...direction });
  }
  const pairs = sameShape ? pairsOf(before, after) : lastPair(before, after);
  const torques = pairs.flatMap(([a, b]) => shiftOf(torqueOf(a), torqueOf(b)));
  const angles = pairs.flatMap(([a, b]) => shiftOf(angleOf(a), angleOf(b)));
  for (const kind of ['torque', 'torque-tolerance', 'unit'] as const) {
    const last = torques.filter((shift) => shift.kind === kind).at(-1);
    if (last !== undefined) shifts.push(last);
  }
  const turn = angles.filter(({ kind }) => kind !== 'unit').at(-1);
  if (turn !== undefined) shifts.push({ ...turn, kind: 'torque-angle' });
  else if (angles.length > 0 && !shifts.some(({ kind }) => kind === 'unit')) {
    shifts.push({ kind: 'unit' });
  }
  return shifts;
}

function pairsOf(before: Stages, after: Stages): (readonly [TorqueStage, TorqueStage])[] {
  return before.flatMap((stage, i) => {
    const other = after[i];
    return other === undefined ? [] : [[stage, other] as const];
  });
}

/** Of two ways of tightening that have other stages, the torques that they end on. */
function lastPair(before: Stages, after: Stages): (readonly [TorqueStage, TorqueStage])[] {
  const [a, b] = [before, after].map((stages) =>
    stages.findLast((stage) => torqueOf(stage) !== undefined),
  );
  if (a === undefined || b === undefined) return [];
  const only = (stage: TorqueStage): TorqueStage =>
    stage.does === 'tighten-and-turn' ? { does: 'tighten', to: stage.to } : stage;
  return [[only(a), only(b)]];
}

const torqueOf = (stage: TorqueStage): Quantity | undefined =>
  stage.does === 'tighten' || stage.does === 'tighten-and-turn' ? stage.to : undefined;
const angleOf = (stage: TorqueStage): Quantity | undefined =>
  stage.does === 'tighten' ? undefined : stage.by;

function shiftOf(a: Quantity | undefined, b: Quantity | undefined): readonly Shift[] {
  if (a === undefined || b === undefined) return [];
  const shift = compareQuantities(a, b);
  if (shift.how === 'same') return [];
  if (shift.how === 'unit') return mainUnit(a) === mainUnit(b) ? [] : [{ kind: 'unit' }];
  const middle = middleShift(a, b);
  if (middle !== undefined) return [{ kind: 'torque', direction: middle }];
  return [{ kind: 'torque-tolerance', ...towards(shift.direction) }];
}

const towards = (direction: Shift['direction']): Pick<Shift, 'direction'> =>
  direction === undefined ? {} : { direction };

function threadShifts(before: Torque, after: Torque): readonly Shift[] {
  if (before.threads === after.threads) return [];
  const words = ({ threads }: Torque): string => threads ?? 'not said';
  return [{ kind: 'torque-lubrication', before: words(before), after: words(after) }];
}
