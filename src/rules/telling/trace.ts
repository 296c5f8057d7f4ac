import type { Place, Related } from '../../../schemas/finding.ts';
import type { Trace } from '../../ledger/index.ts';
import { verbWords } from '../wording/verbs.ts';
import { related } from './related.ts';

/** The place that made a state, as a second place: "4 of 8 taken out here". */
export function traced(trace: Trace | undefined, size: number): Related[] {
  return trace === undefined ? [] : [relatedTo(trace, size, false), ...traced(trace.inside, size)];
}

/** The whole story of an item. Where pieces come back at one place only, and not all of them, "only" says so. */
export function storyOf(story: readonly Trace[], size: number): Related[] {
  const isOnly = (trace: Trace): boolean =>
    story.filter((other) => isBack(other) && isTightening(other) === isTightening(trace)).length ===
    1;
  return story.flatMap((trace) => [
    relatedTo(trace, size, isOnly(trace)),
    ...traced(trace.inside, size),
  ]);
}

const relatedTo = (trace: Trace, size: number, isOnly: boolean): Related =>
  related(trace.place, traceLabel(trace, size, isOnly));

/** A place where a thing is declared. */
export function declared(place: Place, what: string): Related {
  return related(place, `${what} is declared here`);
}

function traceLabel(trace: Trace, size: number, isOnly: boolean): string {
  if (trace.verb === 'perform') return 'brought to this state by the procedure performed here';
  const { done } = verbWords[trace.verb];
  if (size <= 1 || trace.count >= size) return `${done} here`;
  if (trace.verb === 'install' || trace.verb === 'return') {
    const only = isOnly ? 'only ' : '';
    return `${only}${trace.count} ${trace.count === 1 ? 'goes' : 'go'} back here`;
  }
  return `${isOnly && isBack(trace) ? 'only ' : ''}${trace.count} of ${size} ${done} here`;
}

const isBack = ({ verb }: Trace): boolean => verb !== 'perform' && verbWords[verb].back;

const isTightening = ({ verb }: Trace): boolean => verb === 'torque' || verb === 'tighten';
