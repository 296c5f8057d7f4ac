import { type Baseline, baselineFormat, type KnownFinding } from '../../../schemas/baseline.ts';
import type { Finding } from '../../../schemas/finding.ts';
import { canBeKnown } from './can-be-known.ts';
import { inOrder } from './in-order.ts';
import { printOf } from './print-of.ts';

/** The baseline that lists all findings that one may list. */
export function baselineOf(findings: readonly Finding[]): Baseline {
  const alike = Map.groupBy(findings.filter(canBeKnown), printOf);
  const known = [...alike].flatMap(([print, [first, ...others]]) =>
    first === undefined ? [] : [knownFinding(first, print, 1 + others.length)],
  );
  return { baseline: baselineFormat, known: inOrder(known) };
}

function knownFinding(
  { rule, procedure, file, item, when, message }: Finding,
  print: string,
  count: number,
): KnownFinding {
  return {
    rule,
    ...(procedure === undefined ? { file } : { procedure }),
    ...(item !== undefined && { item }),
    ...(when !== undefined && { when }),
    says: message,
    print,
    count,
  };
}
