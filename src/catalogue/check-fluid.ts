import type { Place } from '../../schemas/finding.ts';
import { canonical, type Quantity } from '../quantity/index.ts';
import type { CatalogueFact } from './facts.ts';
import { glycolShare } from './glycol-share.ts';
import type { Circuit } from './model.ts';

type Held = Pick<Circuit, 'capacity' | 'mix' | 'base'>;
type Base = { readonly faulty: Set<string>; placeOf(member: string): Place };

/** Whether a circuit can hold what it is said to hold; a member that cannot be used is named in `faulty`. */
export function checkFluid(
  { capacity, mix, base }: Held,
  { faulty, placeOf }: Base,
): readonly CatalogueFact[] {
  const facts: CatalogueFact[] = [];
  if (capacity !== undefined && isNothing(capacity)) {
    facts.push({ kind: 'capacity-zero', place: placeOf('capacity') });
    faulty.add('capacity');
  }
  if (base !== undefined && !faulty.has('mix') && glycolShare({ mix }) === undefined)
    facts.push({ kind: 'base-unfit', place: placeOf('base'), base });
  return facts;
}

export const isNothing = (capacity: Quantity): boolean => canonical(capacity).high?.value === 0;
