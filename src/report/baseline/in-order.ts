import type { KnownFinding } from '../../../schemas/baseline.ts';
import { compareText } from '../../source/index.ts';

/** Known findings by procedure or file, rule, item, words and print, so that a change shows where it belongs. */
export function inOrder(known: readonly KnownFinding[]): KnownFinding[] {
  return known.toSorted((a, b) => {
    const [ofA, ofB] = [keysOf(a), keysOf(b)];
    return ofA.reduce((found, key, i) => found || compareText(key, ofB[i] ?? ''), 0);
  });
}

const keysOf = ({ procedure, file, rule, item, when, says, print }: KnownFinding): string[] => [
  procedure ?? file ?? '',
  rule,
  item ?? '',
  when ?? '',
  says,
  print,
];
