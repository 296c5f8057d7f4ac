import { parseStrength, parseThread } from '../joint/index.ts';
import type { Screw } from './model.ts';
import type { Reading } from './reading.ts';

interface Written {
  readonly thread?: string | undefined;
  readonly class?: string | undefined;
  readonly grade?: string | undefined;
}

/** The thread and strength written below a path; what no standard has is told. `item` is the id of the entry. */
export function readScrew(
  reading: Reading,
  path: string,
  written: Written,
  item: string | undefined,
): Screw {
  const placeOf = (member: string) => reading.written.placeOf(`${path}.${member}`);
  const thread = written.thread === undefined ? {} : parseThread(written.thread);
  if (written.thread !== undefined && thread.problem !== undefined) {
    const place = placeOf('thread');
    const { problem } = thread;
    reading.facts.push({ kind: 'thread-unknown', place, written: written.thread, item, problem });
  }
  const strengths = (['class', 'grade'] as const).map((member) => {
    const text = written[member];
    if (text === undefined) return undefined;
    const { value, problem } = parseStrength(member, text);
    if (problem !== undefined) {
      const place = placeOf(member);
      reading.facts.push({ kind: 'class-unknown', place, written: text, item, problem });
    }
    return value;
  });
  return { thread: thread.value, strength: strengths.find((one) => one !== undefined) };
}
