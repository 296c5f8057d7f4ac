import { itemName, ownerOf, type PullLine } from '../derive/index.ts';
import type { PullRow } from './book.ts';
import {
  pullAmount,
  pullContainers,
  pullName,
  pullPartNumber,
  pullSpecification,
} from './pull-words.ts';
import type { ManualContext } from './sheet-context.ts';
import { itemLink } from './site-links.ts';

/** A line of a pull list as a sheet shows it. A single tool needs no count. */
export function pullRow(line: PullLine, { manual, policy }: ManualContext): PullRow {
  const { item, one, kind, named, count, isMost, when } = line;
  const isSingle = (kind === 'tool' || kind === 'aid') && count === 1;
  const amount = pullAmount(line, policy);
  const told = [amount, pullSpecification(line, policy), pullPartNumber(line)];
  const goesWith =
    named !== undefined && kind === 'fastener' ? `with ${itemName(item, count)}` : '';
  return {
    item: itemLink(item, ownerOf(manual, one, item), pullName(line)),
    count: isSingle ? undefined : count,
    isMost,
    detail: [...told, goesWith].filter(Boolean).join(', ') || undefined,
    containers: pullContainers(line),
    when: when?.words,
    condition: when?.machines,
  };
}
