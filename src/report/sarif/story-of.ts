import type { CodeFlow, ThreadFlowLocation } from 'sarif';
import type { Finding, Related } from '../../../schemas/finding.ts';
import { comparePlaces } from '../../source/index.ts';
import type { Places } from './places.ts';

/**
 * What came to pass, stop by stop, from what the catalogue says over the removal to the finding itself, which is the
 * last stop. Undefined where one place says it all.
 */
export function storyOf(finding: Finding, places: Places): CodeFlow | undefined {
  const { related, message, file, start, end } = finding;
  if (related.length === 0) return undefined;
  const isDeclared = (one: Related): boolean => one.file !== file && one.file.endsWith('.yaml');
  const declared = related.filter(isDeclared);
  const done = related.filter((one) => !isDeclared(one));
  const own = { file, start, end };
  // Within one file the steps stand in the order in which they are done.
  const isOneFile = done.every((one) => one.file === file);
  const acts = isOneFile ? done.toSorted(comparePlaces) : done;
  const isFirst = isOneFile && acts.some((one) => comparePlaces(own, one) < 0);
  const before = acts.filter((one) => isFirst && comparePlaces(one, own) < 0);
  const after = acts.filter((one) => !before.includes(one));
  const stops = [
    ...[...declared, ...before].map((one) => places.location(one, one.label)),
    ...(isFirst ? [places.location(own, 'it begins here')] : []),
    ...after.map((one) => places.location(one, one.label)),
  ].map((location, i): ThreadFlowLocation => ({ location, executionOrder: i + 1 }));
  const last: ThreadFlowLocation = {
    location: places.location(own, message),
    executionOrder: stops.length + 1,
    importance: 'essential',
  };
  return { threadFlows: [{ locations: [...stops, last] }] };
}
