import { parseQuantity } from './parse-quantity.ts';
import type { QuantityFault, QuantityProblem, Stretch } from './problem.ts';
import { type Angle, isMeasureOf, kindOf, type Quantity, type Torque } from './quantity.ts';
import type { UnitKind } from './unit-kind.ts';

/** One pass of a tightening: to a torque, to a torque and then on by an angle, on by an angle, or back by one. */
export type TorqueStage =
  | { readonly does: 'tighten'; readonly to: Torque }
  | { readonly does: 'tighten-and-turn'; readonly to: Torque; readonly by: Angle }
  | { readonly does: 'turn'; readonly by: Angle }
  | { readonly does: 'back-off'; readonly by: Angle };

/** How a fastener is tightened, stage by stage. */
export type TorqueSpec = { readonly stages: readonly [TorqueStage, ...TorqueStage[]] };

/** A fault in one stage (counted from 0, offsets into that stage's text), or that there is no stage at all. */
export type TorqueProblem =
  | (Stretch & { readonly stage: number } & (
        | QuantityFault
        | {
            readonly code: 'stage-of-other-kind';
            readonly kind: UnitKind;
            readonly wanted: 'torque or angle' | 'angle';
          }
      ))
  | { readonly code: 'no-stage' };

export type ParsedTorqueSpec = {
  readonly value?: TorqueSpec;
  readonly problems: readonly TorqueProblem[];
};

/** Parses `22 N·m`, or a list of stages: `20 N·m`, `60 N·m + 90°`, `90°`, `back off 1/4 turn`. */
export function parseTorqueSpec(text: string | readonly string[]): ParsedTorqueSpec {
  const parsed = (typeof text === 'string' ? [text] : text).map(parseStage);
  const problems = parsed.flatMap((stage) => stage.problems);
  const [first, ...rest] = parsed.flatMap((stage) => stage.value ?? []);
  if (parsed.length === 0) return { problems: [{ code: 'no-stage' }] };
  const isWhole = rest.length + 1 === parsed.length;
  return first && isWhole ? { value: { stages: [first, ...rest] }, problems } : { problems };
}

type ParsedStage = { readonly value?: TorqueStage; readonly problems: readonly TorqueProblem[] };

const backOff = /^\s*(?:back(?:ing)?[\s-]*off|loosen)(?:\s+by)?\s+/i;

function parseStage(text: string, stage: number): ParsedStage {
  const lead = backOff.exec(text)?.[0].length ?? 0;
  const { value, problems } = parseQuantity(text.slice(lead));
  const told = problems.map((problem): TorqueProblem => ({ ...moved(problem, lead), stage }));
  if (!value) return { problems: told };
  const made = lead > 0 ? backOffStage(value) : tighteningStage(value);
  const fault = made ? turnFault(made) : undefined;
  if (made && !fault) return { value: made, problems: told };
  const stretch = { start: lead, end: text.trimEnd().length, stage };
  const kind = kindOf(value);
  const wanted = lead > 0 ? 'angle' : 'torque or angle';
  const problem: TorqueProblem = fault
    ? { ...stretch, ...fault, written: text.slice(lead).trim() }
    : { ...stretch, code: 'stage-of-other-kind', kind, wanted };
  return { problems: [...told, problem] };
}

function tighteningStage(quantity: Quantity): TorqueStage | undefined {
  if (quantity.form === 'torque-angle')
    return { does: 'tighten-and-turn', to: quantity.torque, by: quantity.angle };
  if (isMeasureOf(quantity, 'torque')) return { does: 'tighten', to: quantity };
  if (isMeasureOf(quantity, 'angle')) return { does: 'turn', by: quantity };
  return undefined;
}

function backOffStage(quantity: Quantity): TorqueStage | undefined {
  return isMeasureOf(quantity, 'angle') ? { does: 'back-off', by: quantity } : undefined;
}

/** A turn backwards is said with "back off", never with a minus. */
function turnFault(stage: TorqueStage) {
  if (stage.does !== 'turn' && stage.does !== 'back-off') return undefined;
  const { by } = stage;
  const least = by.form === 'range' ? by.low.value : by.amount.value;
  return least < 0 ? ({ code: 'negative', kind: 'angle' } as const) : undefined;
}

function moved(problem: QuantityProblem, by: number): QuantityProblem {
  return { ...problem, start: problem.start + by, end: problem.end + by };
}
