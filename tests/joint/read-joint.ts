import {
  implausibleStage,
  parseStrength,
  parseThread,
  type Thread,
  type ThreadCondition,
  type TorqueBand,
  torqueBand,
} from '../../src/joint/index.ts';
import { parseTorqueSpec, type Torque } from '../../src/quantity/index.ts';

export function threadOf(text: string): Thread {
  const { value } = parseThread(text);
  if (value === undefined) throw new Error(`no thread: ${text}`);
  return value;
}

export function bandOf(
  thread: string,
  strength?: { class: string } | { grade: string },
  threads?: ThreadCondition,
): TorqueBand {
  const read =
    strength === undefined
      ? {}
      : 'class' in strength
        ? parseStrength('class', strength.class)
        : parseStrength('grade', strength.grade);
  return torqueBand({ thread: threadOf(thread), strength: read.value, threads });
}

/** `too-high`, `too-low` or undefined for a torque, or stages of one. */
export function verdict(band: TorqueBand, ...torque: readonly string[]) {
  const { value } = parseTorqueSpec(torque);
  if (value === undefined) throw new Error(`no torque: ${torque.join()}`);
  return implausibleStage(value, band)?.is;
}

export function torqueOf(text: string): Torque {
  const { value } = parseTorqueSpec(text);
  const [stage] = value?.stages ?? [];
  if (stage?.does !== 'tighten') throw new Error(`no torque: ${text}`);
  return stage.to;
}
