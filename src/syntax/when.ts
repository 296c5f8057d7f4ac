import { parseCondition } from '../applicability/index.ts';
import type { Span } from './directive-tokens.ts';
import type { When } from './model.ts';
import type { Reading } from './reading.ts';

/** Reads a condition that stands in `span`; undefined, and the fact told, where it is none. */
export function readWhen(reading: Reading, written: string, span: Span): When | undefined {
  const { value, problems } = parseCondition(written);
  if (value !== undefined) return { condition: value, written, place: reading.place(span) };
  const isVerbatim = reading.source(span) === written;
  for (const problem of problems) {
    const start = span.start + problem.start;
    const end = span.start + problem.end;
    const place = reading.place(isVerbatim && start < end ? { start, end } : span);
    reading.facts.push({ kind: 'condition-wrong', place, written, problem });
  }
  return undefined;
}
