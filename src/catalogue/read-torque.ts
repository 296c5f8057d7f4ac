import type { TorqueInput } from '../../schemas/catalogue.ts';
import { parseTorqueSpec, type TorqueProblem } from '../quantity/index.ts';
import type { Torque } from './model.ts';
import type { Reading } from './reading.ts';

/** The torque written at a path, stage by stage; undefined, with the facts told, where a stage cannot be read. */
export function readTorque(reading: Reading, path: string, input: TorqueInput): Torque | undefined {
  const { stages, threads, stagesPath } = partsOf(path, input);
  const written = typeof stages === 'string' ? [stages] : stages;
  const { value: spec, problems } = parseTorqueSpec(written);
  for (const problem of problems) {
    if (problem.code === 'no-stage') continue;
    const stagePath = typeof stages === 'string' ? stagesPath : `${stagesPath}.${problem.stage}`;
    tell(reading, stagePath, written[problem.stage] ?? '', problem);
  }
  if (spec === undefined) return undefined;
  return { spec, threads, written, place: reading.written.placeOf(stagesPath), byDefault: false };
}

function partsOf(path: string, input: TorqueInput) {
  if (typeof input === 'string' || Array.isArray(input)) {
    return { stages: input, threads: undefined, stagesPath: path };
  }
  return { stages: input.stages, threads: input.threads, stagesPath: `${path}.stages` };
}

function tell(
  reading: Reading,
  path: string,
  written: string,
  problem: Exclude<TorqueProblem, { code: 'no-stage' }>,
): void {
  const place = reading.within(reading.written.placeOf(path), written, problem);
  if (problem.code !== 'stage-of-other-kind') {
    reading.facts.push({ kind: 'quantity-wrong', place, written, problem });
    return;
  }
  reading.facts.push({
    kind: 'unit-wrong-kind',
    place,
    written,
    found: problem.kind,
    expected: problem.wanted === 'angle' ? 'angle' : 'torque',
    what: problem.wanted === 'angle' ? 'the turn back' : 'the torque',
  });
}
