import type { ManualSettings } from '../../schemas/manual.ts';
import type { DefaultTorque, Fastener, Torque } from './model.ts';
import { readScrew } from './read-screw.ts';
import { readTorque } from './read-torque.ts';
import type { Reading } from './reading.ts';

/** The manual's torques by thread and class. One that cannot be read is told and left out. */
export function readDefaultTorques(
  reading: Reading,
  settings: ManualSettings,
): readonly DefaultTorque[] {
  return settings['default-torques'].flatMap((rule, i) => {
    const torque = readTorque(reading, `default-torques.${i}.torque`, rule.torque);
    if (torque === undefined) return [];
    const { thread, class: strength, grade } = rule;
    const path = `default-torques.${i}`;
    return [
      {
        thread,
        class: strength,
        grade,
        screw: readScrew(reading, path, rule, undefined),
        torque: { ...torque, byDefault: true },
        placeOf: (member: string) => reading.written.placeOf(`${path}.${member}`),
      },
    ];
  });
}

/**
 * The torque that the manual's rules give a fastener: by its thread, and by class or grade where the rule
 * names one. A rule that names one goes before a rule for all; else the first.
 */
export function defaultTorque(
  rules: readonly DefaultTorque[],
  fastener: Pick<Fastener, 'thread' | 'class' | 'grade'>,
): Torque | undefined {
  const { thread } = fastener;
  if (thread === undefined) return undefined;
  const fitting = rules.filter(
    (rule) =>
      plain(rule.thread) === plain(thread) &&
      (rule.class === undefined || rule.class === fastener.class) &&
      (rule.grade === undefined || rule.grade === fastener.grade),
  );
  const particular = fitting.find((rule) => rule.class !== undefined || rule.grade !== undefined);
  return (particular ?? fitting[0])?.torque;
}

/** `M10 x 1.5`, `M10×1.5` and `m10x1.5` are one thread. */
function plain(thread: string): string {
  return thread.toLowerCase().replaceAll('×', 'x').replace(/\s+/g, '');
}
