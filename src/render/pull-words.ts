import { pluralName } from '../catalogue/index.ts';
import { boundValues, itemName, type PullLine, strengthOf } from '../derive/index.ts';
import { printAsWritten, printByPolicy, type UnitPolicy } from '../quantity/index.ts';

const noBreak = '\u00a0';

/** What is handed out, in the number of the count: "flat washers". */
export function pullName({ item, named, count = 1 }: PullLine): string {
  if (named === undefined) return itemName(item, count);
  return count === 1 ? named : pluralName(named);
}

/** "38 L (10.0 US gal)", "up to 9 L"; undefined for what is counted or taken as needed. */
export function pullAmount(line: PullLine, policy: UnitPolicy): string | undefined {
  const { quantity, isMost } = line;
  if (quantity === undefined) return undefined;
  return `${isMost ? 'up to ' : ''}${printByPolicy(quantity, policy)}`;
}

/** "2 × 20 L and 1 × 5 L"; undefined where no sizes are known. Sizes stay as the manual writes them. */
export function pullContainers({ containers = [] }: PullLine): string | undefined {
  if (containers.length === 0) return undefined;
  return containers
    .map(({ count, size }) => `${count}${noBreak}×${noBreak}${printAsWritten(size)}`)
    .join(' and ');
}

/** What tells it from others of its name: thread and class, size, specification. */
export function pullSpecification(line: PullLine, policy: UnitPolicy): string | undefined {
  const { item, named, share } = line;
  switch (item.kind) {
    case 'tool':
      return item.size && boundValues(item.size);
    case 'consumable':
      return item.specification && boundValues(item.specification);
    case 'circuit':
      return share === undefined
        ? item.fluid
        : `${printByPolicy(share, policy)} of the mix: ${item.fluid}`;
    case 'fastener':
      if (named !== undefined) return undefined;
      return [item.thread, strengthOf(item)].filter(Boolean).join(', ') || undefined;
    default:
      return undefined;
  }
}

/** The part number of the item itself; what goes with it or is mixed into it has none. */
export function pullPartNumber({ item, named }: PullLine): string | undefined {
  return named === undefined && item.kind !== 'hazard' ? item['part-number'] : undefined;
}

/** The catalogue's note, where it is about what is handed out. */
export function pullNote({ item, named }: PullLine): string | undefined {
  return named === undefined && item.kind !== 'hazard' ? item.note : undefined;
}
