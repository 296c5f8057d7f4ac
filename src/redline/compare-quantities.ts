import type { Direction } from '../../schemas/redline.ts';
import {
  type Canonical,
  canonical,
  mainUnit,
  type Quantity,
  sameQuantity,
} from '../quantity/index.ts';

/** How one quantity became another; `undefined` as a direction where the two cannot be put on one scale. */
export type QuantityShift =
  | { readonly how: 'same' }
  /** The same in another unit, within the precision to which both are written. */
  | { readonly how: 'unit' }
  | { readonly how: 'other'; readonly direction: Direction | undefined };

/** Compares what two quantities allow, whatever their units and forms: 22 ± 2 N·m is 20..24 N·m. */
export function compareQuantities(a: Quantity, b: Quantity): QuantityShift {
  if (sameQuantity(a, b)) return { how: mainUnit(a) === mainUnit(b) ? 'same' : 'unit' };
  return { how: 'other', direction: directionOf(canonical(a), canonical(b)) };
}

function directionOf(a: Canonical, b: Canonical): Direction | undefined {
  if (a.kind !== b.kind) return undefined;
  const [low, high] = [signOf(a.low, b.low, -1), signOf(a.high, b.high, 1)];
  if (low === 0 && high === 0) return undefined;
  if (low <= 0 && high >= 0) return 'wider';
  if (low >= 0 && high <= 0) return 'narrower';
  return high < 0 ? 'lower' : 'higher';
}

/** What a quantity allows at its middle went down, up, or stayed. */
export function middleShift(a: Quantity, b: Quantity): 'lower' | 'higher' | undefined {
  const [one, two] = [middleOf(canonical(a)), middleOf(canonical(b))];
  if (one === undefined || two === undefined || sameNumber(one, two)) return undefined;
  return two < one ? 'lower' : 'higher';
}

const middleOf = ({ low, high }: Canonical): number | undefined =>
  low === undefined || high === undefined ? (low ?? high)?.value : (low.value + high.value) / 2;

type End = Canonical['low'];

/** Whether an end goes down (-1), stays or goes up. An end that is not there stands without limit on its side. */
function signOf(a: End, b: End, side: -1 | 1): -1 | 0 | 1 {
  if (a === undefined && b === undefined) return 0;
  if (a === undefined) return side === 1 ? -1 : 1;
  if (b === undefined) return side;
  if (sameNumber(a.value, b.value)) return 0;
  return b.value < a.value ? -1 : 1;
}

/** Doubles of two units may differ in their last digits. */
const sameNumber = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
