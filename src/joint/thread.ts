import { readInchThread } from './thread-inch.ts';
import { readMetricThread } from './thread-metric.ts';
import type { Thread, ThreadProblem } from './thread-model.ts';

/**
 * Reads a thread designation such as `M12`, `M12 × 1.25` or `1/2-13 UNC`. What is neither ISO metric nor unified
 * inch (pipe, hose, trapezoidal and tapping threads, words) has no value and no problem. A metric or inch
 * designation that no standard has is a problem.
 */
export function parseThread(text: string): {
  readonly value?: Thread;
  readonly problem?: ThreadProblem;
} {
  if (text.length > longest) return {};
  const plain = text.trim().replace(/\s+/g, ' ');
  return readMetricThread(plain) ?? readInchThread(plain) ?? {};
}

/** A longer text is no designation. */
const longest = 60;
