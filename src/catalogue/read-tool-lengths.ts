import type { ItemsInput } from '../../schemas/catalogue.ts';
import { plainLength } from '../joint/index.ts';
import type { Quantity } from '../quantity/index.ts';
import type { Tool } from './model.ts';
import type { Reading } from './reading.ts';

type Lengths = Pick<Tool, 'length' | 'extension'>;

/** How long a torque wrench or its extension is. Anything but one figure above zero is told, and named in `faulty`. */
export function readToolLengths(
  { id, path, data }: { id: string; path: string; data: ItemsInput['tools'][string] },
  reading: Reading,
  faulty: Set<string>,
): Lengths {
  const read = (member: keyof Lengths): Quantity | undefined => {
    const written = data[member];
    if (written === undefined) return undefined;
    const at = `${path}.${member}`;
    const value = reading.quantity(at, written, 'length', `the ${member} of ${id}`);
    if (value !== undefined && plainLength(value) !== undefined) return value;
    faulty.add(member);
    if (value === undefined) return undefined;
    const place = reading.written.placeOf(at);
    reading.facts.push({ kind: 'tool-length-wrong', place, written, member, item: id });
    return undefined;
  };
  return { length: read('length'), extension: read('extension') };
}
